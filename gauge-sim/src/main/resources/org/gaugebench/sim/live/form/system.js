'use strict';
(() => {
    const token = document.querySelector('meta[name=bench-token]').content;
    const by = id => document.getElementById(id);
    const KEPT = 'gaugebench-my-system';
    const LARGEST = 65536;
    let words = {};
    let asked = '';
    let waiting = 0;
    let last = null;
    const w = (key, ...parts) => (words[key] || key).replace(/\{(\d)\}/g, (m, i) => parts[i]);
    const cell = text => text.startsWith('#sys-') ? w(text.slice(1)) : text;
    const say = text => { by('status').textContent = text; };
    const make = (name, text, style) => {
        const made = document.createElement(name);
        if (text !== undefined) { made.textContent = text; }
        if (style) { made.className = style; }
        return made;
    };

    async function post(path, body) {
        try {
            const answer = await fetch(path, {method: 'POST',
                headers: {'Content-Type': 'application/json', 'X-Bench-Token': token}, body});
            if (!answer.ok) {
                say((await answer.text()).trim());
                return null;
            }
            say('');
            return await answer.json();
        } catch (e) {
            say(w('lost-form'));
            return null;
        }
    }

    /* Fields. */
    const fields = [...document.querySelectorAll('.field[data-key]')];
    const inputOf = field => field.querySelector('input[type=text], select');
    const tickOf = field => field.querySelector('input[type=checkbox]');
    function setField(field, text) {
        inputOf(field).value = text;
        const tick = tickOf(field);
        if (tick) { tick.checked = text === ''; }
    }
    fields.forEach(field => {
        const tick = tickOf(field);
        if (!tick) { return; }
        inputOf(field).addEventListener('input', () => { tick.checked = inputOf(field).value.trim() === ''; });
        tick.addEventListener('change', () => {
            if (tick.checked) { inputOf(field).value = ''; } else { inputOf(field).focus(); }
            changed();
        });
    });

    /* Rows. */
    const lists = {
        loads: {row: 'load-row', add: 'add-load', name: 'sys-load-n'},
        chargers: {row: 'charger-row', add: 'add-charger', name: 'sys-charger-n'},
        notes: {row: 'note-row', add: 'add-note', name: 'sys-note-n'},
    };
    let serial = 0;
    const control = part => part.querySelector('input, select');
    /* A time of a file that is no date, such as hours, stands as it is: a field for dates would drop it. */
    function write(input, text) {
        if (input.type === 'datetime-local' && text === LACKING) { return; }
        input.value = text;
        if (input.type === 'datetime-local' && input.value !== text) {
            input.type = 'text';
            input.value = text;
        }
    }
    /* A date of which a part is missing is no empty field. */
    const LACKING = '?';
    const typed = input => input.validity.badInput ? LACKING : input.value.trim();
    function addRow(list, texts) {
        const item = by(lists[list].row).content.firstElementChild.cloneNode(true);
        const id = list + '-' + serial++;
        item.querySelectorAll('[data-part]').forEach(part => {
            const name = part.dataset.part;
            const input = control(part);
            input.id = id + '-' + name;
            if (part.tagName !== 'LABEL') {
                part.querySelector('label').htmlFor = input.id;
                const wrong = part.querySelector('.wrong');
                wrong.id = input.id + '-wrong';
                input.setAttribute('aria-describedby', wrong.id);
            }
            if (input.type === 'checkbox') { input.checked = texts[name] === 'yes';
            } else { write(input, texts[name] || ''); }
        });
        const unit = item.querySelector('[data-part=amount] select');
        if (unit) { unit.value = texts.unit || 'watts'; }
        item.querySelector('.remove').addEventListener('click', () => {
            const next = item.nextElementSibling || item.previousElementSibling;
            item.remove();
            number();
            changed();
            (next ? next.querySelector('input, select') : by(lists[list].add)).focus();
        });
        by(list).append(item);
        number();
        return item;
    }
    /* A row's number is part of every name in it, for whoever hears the page. */
    function number() {
        for (const list of Object.keys(lists)) {
            [...by(list).children].forEach((item, i) => {
                const name = w(lists[list].name, i + 1);
                item.firstElementChild.setAttribute('aria-label', name);
                const shown = item.querySelector('strong');
                if (shown) { shown.textContent = name; }
            });
        }
    }
    function rowTexts(list) {
        return [...by(list).children].map(item => {
            const texts = {};
            item.querySelectorAll('[data-part]').forEach(part => {
                const input = control(part);
                const text = input.type === 'checkbox' ? (input.checked ? 'yes' : '') : typed(input);
                if (text !== '') { texts[part.dataset.part] = text; }
            });
            const unit = item.querySelector('[data-part=amount] select');
            if (unit) { texts.unit = unit.value; }
            return texts;
        });
    }
    for (const list of Object.keys(lists)) {
        by(lists[list].add).addEventListener('click', () => {
            addRow(list, {}).querySelector('input, select').focus();
            changed();
        });
    }

    /* The whole form. */
    function gather() {
        const system = {'my-system': 1};
        for (const field of fields) {
            const text = inputOf(field).value.trim();
            if (text !== '') { system[field.dataset.key] = text; }
        }
        system.loads = rowTexts('loads');
        system.chargers = rowTexts('chargers');
        const notes = rowTexts('notes');
        if (notes.length > 0) { system.notes = notes; }
        return system;
    }
    function show(system) {
        fields.forEach(field => setField(field, system[field.dataset.key] || ''));
        for (const list of Object.keys(lists)) {
            by(list).replaceChildren();
            (system[list] || []).forEach(texts => addRow(list, texts));
        }
        tellWrong([]);
    }
    function keep() {
        try { sessionStorage.setItem(KEPT, JSON.stringify(gather())); } catch (e) { /* only a help */ }
    }
    function changed() {
        keep();
        const stale = by('answer-stale');
        if (stale) { stale.hidden = false; }
    }
    for (const area of [by('form'), by('ask')]) {
        area.addEventListener('input', changed);
        area.addEventListener('change', changed);
    }
    by('form').addEventListener('submit', event => event.preventDefault());

    /* What is wrong stands at its field. */
    function placeOf(key) {
        const parts = key.split('.');
        if (parts.length === 1) {
            return document.querySelector('.field[data-key="' + key + '"]');
        }
        const item = by(parts[0]).children[Number(parts[1])];
        return item ? item.querySelector('[data-part="' + parts[2] + '"]') : null;
    }
    function tellWrong(list) {
        document.querySelectorAll('.wrong').forEach(p => { p.textContent = ''; });
        document.querySelectorAll('[aria-invalid]').forEach(e => e.removeAttribute('aria-invalid'));
        let first = null;
        for (const each of list) {
            const place = placeOf(each.field);
            /* Where rows are wrong together, the key that adds one is the place to go on. */
            const together = lists[each.field];
            const note = together ? by(each.field + '-wrong') : place && place.querySelector('.wrong');
            if (!note) {
                say(each.message);
                continue;
            }
            if (note.textContent === '') { note.textContent = each.message; }
            const input = together ? by(together.add) : control(place);
            if (!together) { input.setAttribute('aria-invalid', 'true'); }
            const folded = input.closest('details');
            if (folded) { folded.open = true; }
            if (!first || input.compareDocumentPosition(first) & Node.DOCUMENT_POSITION_FOLLOWING) { first = input; }
        }
        if (first) {
            say(w('sys-mend', list.length));
            first.focus();
        }
    }

    /* Answers. */
    /* A unit stays with its figure, and a rating in one piece. */
    const whole = text => text.replace(/(\d) (?=[%°µ]|\p{L}{1,4}(?!\p{L}))/gu, '$1\u00a0')
        .replace(/ \/ (?=\d)/g, '\u00a0/\u00a0');
    const pairs = (list, lines) => {
        for (const [label, ...texts] of lines) {
            if (label !== '') { list.append(make('dt', cell(label))); }
            list.append(make('dd', whole(texts.map(cell).join(': '))));
        }
        return list;
    };
    function table(part) {
        const wide = make('div', undefined, 'wide');
        wide.tabIndex = 0;
        wide.setAttribute('role', 'group');
        wide.setAttribute('aria-label', cell(part.heading));
        const made = make('table', undefined, 'ledger' + (part.heads.length > 4 ? '' : ' few'));
        if (part.heads.length > 0) {
            const row = make('tr');
            part.heads.forEach((head, i) => {
                const th = make('th', whole(cell(head)), i === 0 ? '' : 'figure');
                th.scope = 'col';
                row.append(th);
            });
            made.createTHead().append(row);
        }
        const body = made.createTBody();
        for (const cells of part.rows) {
            const row = body.insertRow();
            cells.forEach((text, i) => {
                const td = make(i === 0 ? 'th' : 'td', whole(cell(text)), i === 0 ? '' : 'figure');
                if (i === 0) { td.scope = 'row'; }
                row.append(td);
            });
        }
        wide.append(made);
        return wide;
    }
    function month(part, width) {
        const box = make('figure', undefined, 'strip');
        const key = make('ul', undefined, 'key');
        for (const [pen, word] of [['truth-pen', 'sys-really'], ['own-pen', 'sys-yours'], ['band-pen', 'sys-could']]) {
            const item = make('li');
            item.append(make('span', undefined, pen), make('span', w(word)));
            key.append(item);
        }
        const label = w('sys-a-month') + ': ' + by('answer-sentence').textContent;
        box.append(key, systemChart.month(part, label, {percent: w('sys-percent'), days: w('sys-days'),
            chargeBy: w('sys-charge-by', part.chargeByDay)}, width));
        return box;
    }
    function bars(part, width) {
        const box = make('figure', undefined, 'strip');
        const label = w('sys-a-bars') + ': ' + part.bars.map(b => b.label + ' ' + b.shown).join(', ');
        box.append(systemChart.bars(part, label, cell, width));
        return box;
    }
    function partOf(part, width) {
        switch (part.kind) {
        case 'table': return table(part);
        case 'month': return month(part, width);
        case 'bars': return bars(part, width);
        case 'text': return make('p', part.text);
        case 'list': {
            const list = make('ul');
            part.items.forEach(text => list.append(make('li', text)));
            return list;
        }
        default: {
            const list = make('ol', undefined, 'steps');
            for (const step of part.steps) {
                const item = make('li');
                item.append(make('strong', cell(step.what)), pairs(make('dl', undefined, 'pairs'), step.lines));
                list.append(item);
            }
            return list;
        }
        }
    }
    function download(name, text, type) {
        const link = make('a');
        link.href = URL.createObjectURL(new Blob([text], {type}));
        link.download = name;
        document.body.append(link);
        link.click();
        link.remove();
        setTimeout(() => URL.revokeObjectURL(link.href), 10000);
    }
    function render(answer, question) {
        last = {answer, question};
        by('answer').hidden = false;
        document.body.classList.add('has-answer');
        by('answer-question').textContent = w('sys-q-' + question);
        by('answer-sentence').textContent = answer.answer;
        const box = by('answer-parts');
        box.replaceChildren();
        const stale = make('p', w('sys-stale'), 'stale small screen-only');
        stale.id = 'answer-stale';
        stale.hidden = true;
        box.append(stale);
        answer.more.forEach(text => box.append(make('p', text)));
        const width = box.clientWidth;
        for (const part of answer.parts) {
            box.append(make('h3', cell(part.heading)), partOf(part, width));
        }
        if (answer.assumed.length > 0) {
            box.append(make('h3', w('sys-assumed')), partOf({kind: 'list', items: answer.assumed}, width));
        }
        box.append(toldOf(question));
        const row = make('p', undefined, 'row screen-only');
        if (answer.scenario !== '') {
            const key = make('button', w('sys-scenario'));
            key.id = 'scenario';
            key.type = 'button';
            key.addEventListener('click', () => download('my-system.yaml', answer.scenario, 'application/yaml'));
            row.append(key);
        }
        const print = make('button', w('sys-print'));
        print.type = 'button';
        print.addEventListener('click', () => window.print());
        row.append(print);
        box.append(row, make('h3', w('cautions')));
        answer.cautions.forEach(text => box.append(make('p', text, 'small')));
    }
    /* On paper the answer stands without the form: what it rests on goes with it. */
    function toldOf(question) {
        const told = make('div', undefined, 'on-paper');
        const list = make('ul');
        const unitOf = place => { const unit = place.querySelector('.unit'); return unit ? ' ' + unit.textContent : ''; };
        const isBare = input => /^[-+\d.,]+$/.test(input.value.trim());
        const textOf = place => {
            const input = control(place);
            return input.tagName === 'SELECT' ? input.selectedOptions[0].textContent
                : input.type === 'datetime-local' ? input.value.replace('T', ' ')
                : input.value.trim() + (isBare(input) ? unitOf(place) : '');
        };
        const named = (label, text) => label + (label.endsWith('?') ? ' ' : ': ') + text;
        const labelOf = place => place.querySelector('label').textContent;
        /* A line for each part of the form: alone, "Amp-hours" could be printed on it or typed into the gauge. */
        for (const area of document.querySelectorAll('#form fieldset, #more-' + question)) {
            const texts = fields.filter(field => area.contains(field) && inputOf(field).value.trim() !== '')
                .map(field => named(labelOf(field), textOf(field)));
            if (texts.length > 0) {
                const item = make('li');
                const head = area.querySelector('legend');
                if (head) { item.append(make('strong', head.textContent), ': '); }
                item.append(texts.join('; '));
                list.append(item);
            }
            area.querySelectorAll('.rows li').forEach(row => {
                const parts = [...row.querySelectorAll('.field')].filter(part => control(part).value.trim() !== '')
                    .map(part => {
                        const unit = part.dataset.part === 'surge' ? row.querySelector('.entry select')
                            : part.querySelector('.entry select');
                        /* Of two figures in one unit it is said which they are. */
                        const text = textOf(part) + (unit && isBare(control(part)) && control(part) !== unit ? ' ' + unit.selectedOptions[0].textContent : '');
                        return ['ah', 'charged', 'surge'].includes(part.dataset.part) ? named(labelOf(part), text) : text;
                    });
                row.querySelectorAll('label.switch').forEach(tick => {
                    if (control(tick).checked) { parts.push(tick.querySelector('span').textContent); }
                });
                if (parts.length > 0) {
                    list.append(make('li', row.firstElementChild.getAttribute('aria-label') + ': ' + parts.join(', ')));
                }
            });
        }
        told.append(make('h3', w('sys-told')), list);
        return told;
    }
    async function ask(question) {
        const mine = ++waiting;
        asked = question;
        document.querySelectorAll('#questions [data-question]').forEach(key =>
            key.setAttribute('aria-pressed', String(key.dataset.question === question)));
        history.replaceState(null, '', '#' + question);
        const more = by('more-' + question);
        if (more) { more.open = true; }
        by('pending').textContent = w('sys-working');
        const start = performance.now();
        const answer = await post('/system/answer', JSON.stringify({question, system: gather()}));
        if (mine !== waiting) { return; }
        by('pending').textContent = w('sys-ask-note');
        if (answer === null) { return; }
        page.millis = performance.now() - start;
        tellWrong(answer.wrong || []);
        if (answer.wrong) { return; }
        render(answer, question);
        by('answer').focus({preventScroll: true});
        const box = by('answer').getBoundingClientRect();
        if (box.top > innerHeight * 0.6 || box.top < 0) { by('answer').scrollIntoView(); }
        page.answers++;
    }
    document.querySelectorAll('#questions [data-question]').forEach(key =>
        key.addEventListener('click', () => ask(key.dataset.question)));
    by('ask-notes').addEventListener('click', () => ask('symptom'));

    /* The sheet opens in a window of its own; what is wrong is told here before. */
    async function sheet() {
        const system = gather();
        const checked = await post('/system/save', JSON.stringify({system}));
        if (checked === null) { return; }
        tellWrong(checked.wrong || []);
        if (checked.wrong) { return; }
        by('sheet-system').value = JSON.stringify(system);
        by('sheet-form').submit();
    }
    by('sheet').addEventListener('click', sheet);

    /* A file of one's own. */
    by('save').addEventListener('click', async () => {
        const saved = await post('/system/save', JSON.stringify({system: gather()}));
        if (saved === null) { return; }
        tellWrong(saved.wrong || []);
        if (!saved.wrong) { download(saved.name, saved.text, 'application/json'); }
    });
    by('open').addEventListener('click', () => by('file').click());
    by('file').addEventListener('change', async () => {
        const file = by('file').files[0];
        by('file').value = '';
        if (!file) { return; }
        if (file.size > LARGEST) {
            say(w('sys-too-large'));
            return;
        }
        const opened = await post('/system/open', await file.text());
        if (opened === null) { return; }
        show(opened.system);
        changed();
        say(w('sys-opened', file.name));
    });
    by('clear').addEventListener('click', () => {
        show({});
        document.querySelectorAll('#questions [aria-pressed]').forEach(key => key.removeAttribute('aria-pressed'));
        history.replaceState(null, '', location.pathname);
        by('answer').hidden = true;
        document.body.classList.remove('has-answer');
        say('');
        changed();
    });
    by('theme').addEventListener('click', () => {
        const root = document.documentElement;
        const dark = root.dataset.theme ? root.dataset.theme === 'dark'
            : matchMedia('(prefers-color-scheme: dark)').matches;
        root.dataset.theme = dark ? 'light' : 'dark';
    });
    document.querySelectorAll('.to-questions').forEach(key => key.addEventListener('click', () => {
        by('ask').scrollIntoView();
        document.querySelector('#questions button').focus({preventScroll: true});
    }));
    let resized = 0;
    addEventListener('resize', () => {
        clearTimeout(resized);
        resized = setTimeout(() => { if (last && !by('answer').hidden) { render(last.answer, last.question); } }, 200);
    });

    const page = {ready: false, answers: 0, millis: 0, gather};
    window.gaugebenchSystem = page;
    async function start() {
        try {
            words = await (await fetch('/words')).json();
        } catch (e) {
            by('status').textContent = by('status').dataset.lost;
            return;
        }
        let kept = null;
        try { kept = JSON.parse(sessionStorage.getItem(KEPT)); } catch (e) { kept = null; }
        if (kept) { show(kept); }
        number();
        /* As long as this window is open the page does not end by itself. */
        const source = new EventSource('/events');
        source.addEventListener('end', () => {
            source.close();
            say(w('over'));
        });
        const question = location.hash.slice(1);
        if (document.querySelector('[data-question="' + CSS.escape(question) + '"]')) { ask(question); }
        page.ready = true;
    }
    start();
})();
