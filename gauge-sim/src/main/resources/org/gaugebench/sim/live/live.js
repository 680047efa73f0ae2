'use strict';
(() => {
    const token = document.querySelector('meta[name=bench-token]').content;
    const by = id => document.getElementById(id);
    const speeds = [1, 60, 600, 3600, 21600, 86400, 604800];
    const speedWords = ['1 s', '1 min', '10 min', '1 h', '6 h', '1 d', '7 d'];
    let words = {};
    let setup = null;
    let frame = null;
    let source = null;
    let level = -1;
    let chosenLevel = -1;
    let windows = [];
    let controls = new Map();
    let updates = 0;
    let over = false;
    const w = (key, ...parts) => (words[key] || key).replace(/\{(\d)\}/g, (m, i) => parts[i]);
    const say = text => { set('status', text); };
    const set = (id, text) => { const e = by(id); if (e && e.textContent !== text) { e.textContent = text; } };
    const two = n => String(n).padStart(2, '0');
    const clock = ms => {
        const s = Math.floor(ms / 1000);
        return Math.floor(s / 86400) + ' d ' + two(Math.floor(s / 3600) % 24) + ':'
            + two(Math.floor(s / 60) % 60) + ':' + two(s % 60);
    };
    /* The decimal sign of the language. */
    const sign = text => text.replace('.', words['decimal-sign'] || '.');
    /* A true minus, and none before a zero. */
    const minus = text => Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
    const fixed = (value, places, unit) => value === null || value === undefined ? '–'
        : sign(minus(value.toFixed(places))) + (unit ? ' ' + unit : '');

    async function act(body) {
        try {
            const answer = await fetch('/act', {method: 'POST',
                headers: {'Content-Type': 'application/json', 'X-Bench-Token': token},
                body: JSON.stringify(body)});
            say(answer.ok ? '' : await answer.text());
            return answer.ok;
        } catch (e) {
            say(w(over ? 'over' : 'lost'));
            return false;
        }
    }

    /* Words. */
    function fillWords() {
        document.querySelectorAll('[data-word]').forEach(e => { e.textContent = w(e.dataset.word); });
        document.querySelectorAll('[data-name]').forEach(e => e.setAttribute('aria-label', w(e.dataset.name)));
        document.documentElement.lang = words.language || 'en';
        document.title = w('title');
    }
    const gaugeName = name => benchLesson.nameOf(name)
        || (name === 'gauge' ? w('main-meter') : name);

    /* Gauges: one side each, built once a run. */
    function buildGauges() {
        const box = by('gauges');
        box.replaceChildren();
        setup.gauges.forEach((gauge, i) => {
            const side = document.createElement('div');
            side.className = 'side';
            side.id = 'gauge-' + gauge.name;
            side.dataset.hook = 'gauge';
            side.style.borderTopColor = 'var(--gauge-' + (i % 6 + 1) + ')';
            side.style.borderTopStyle = i === 0 ? 'solid' : 'dashed';
            const head = document.createElement('h2');
            head.textContent = gaugeName(gauge.name);
            const big = document.createElement('p');
            big.className = 'big';
            const out = document.createElement('output');
            out.setAttribute('aria-live', 'off');
            out.dataset.field = 'percent';
            out.setAttribute('aria-label', gaugeName(gauge.name) + ', ' + w('how-full'));
            big.append(out);
            side.append(head, big);
            for (const field of ['band', 'error']) {
                const note = document.createElement('p');
                note.className = 'note';
                note.dataset.field = field;
                side.append(note);
            }
            const list = document.createElement('dl');
            for (const field of ['amp-hours', 'current', 'volts', 'hours']) {
                const dt = document.createElement('dt');
                dt.textContent = w(field);
                const dd = document.createElement('dd');
                dd.dataset.field = field;
                list.append(dt, dd);
            }
            const fault = document.createElement('p');
            fault.className = 'note fault small doubt';
            fault.dataset.field = 'faults';
            side.append(list, fault);
            box.append(side);
        });
        const key = by('chart-key');
        key.replaceChildren();
        const pen = (style, text) => {
            const item = document.createElement('li');
            const line = document.createElement('span');
            line.className = 'pen';
            line.style.borderTop = 'pen' in style ? '0' : style.line;
            if ('pen' in style) { line.append(benchChart.stroke(style.pen)); }
            item.append(line, ' ' + text);
            key.append(item);
        };
        pen({line: 'var(--pen-truth) solid var(--truth)'}, w('truth'));
        setup.gauges.forEach((gauge, i) => pen({pen: i}, gaugeName(gauge.name)));
    }
    function hours(gauge) {
        if (gauge.hours === 'charging') { return '–'; }
        if (gauge.hours === 'no-estimate') { return '–'; }
        const text = gauge.minutes >= 60 ? fixed(gauge.minutes / 60, 1, 'h')
            : gauge.minutes + ' min';
        return (gauge.hours === 'more-than' ? '> ' : '') + text;
    }
    function showGauge(gauge) {
        const side = by('gauge-' + gauge.name);
        if (!side) { return; }
        const put = (field, text) => {
            const e = side.querySelector('[data-field="' + field + '"]');
            if (e.textContent !== text) { e.textContent = text; }
        };
        const known = gauge.power && gauge.percent !== null;
        put('percent', known ? fixed(gauge.percent, 1, '%') : '–');
        put('band', !gauge.power ? w('no-power') : !known ? w('not-known') : gauge.lower === null
            ? w('could-be-unknown') : w('could-be', Math.floor(gauge.lower), Math.ceil(gauge.upper)));
        put('error', known && frame.revealed
            ? w('off-truth', (gauge.error >= 0.05 ? '+' : '') + fixed(gauge.error, 1, '')) : '');
        put('amp-hours', known ? fixed(gauge.ampHours, 2, 'Ah') : '–');
        put('current', gauge.power ? fixed(gauge.amps, 2, 'A') : '–');
        put('volts', gauge.power ? fixed(gauge.volts, 2, 'V') : '–');
        put('hours', gauge.power ? hours(gauge) : '–');
        const faults = gauge.power ? gauge.faults : [];
        put('faults', faults.length === 0 ? '' : '! ' + w('fault-' + faults[0])
            + (faults.length > 1 ? ' ' + w('more', faults.length - 1) : ''));
    }

    /* Truth and the class's guess, which stays in this window. */
    function showTruth() {
        const truth = frame.truth;
        set('truth-percent', truth ? fixed(truth.percent, 1, '%') : w('hidden'));
        set('truth-note', truth ? fixed(truth.ampHours, 2, 'Ah') + ', ' + fixed(truth.amps, 2, 'A') : '');
        set('reveal', w(frame.revealed ? 'hide' : 'reveal'));
        by('reveal').setAttribute('aria-pressed', String(frame.revealed));
        const guess = parseFloat(by('guess').value);
        set('guess-note', truth && !Number.isNaN(guess)
            ? w('guess-off', fixed(Math.abs(guess - truth.percent), 1, '')) : '');
    }

    /* Controls. */
    const labelOf = it => it.word.startsWith('name:') ? it.word.slice(5)
        : it.group === 'power' ? w('pull', gaugeName(it.name)) : w('c-' + it.word);
    function buildControls() {
        const box = by('control-groups');
        box.replaceChildren();
        controls = new Map();
        const told = setup.gauges.map((gauge, i) => [i === 0 ? 'settings' : 'settings-beside', gauge.name]);
        const groups = ['power', 'loads', 'chargers', 'sensor', 'battery'].map(group => [group, '']);
        for (const [group, whose] of [...groups, ...told]) {
            const inside = setup.controls.filter(it => it.group === group
                && (whose === '' || it.key.startsWith(whose + '.')));
            if (inside.length === 0) { continue; }
            const field = document.createElement('fieldset');
            field.dataset.group = group;
            const legend = document.createElement('legend');
            legend.textContent = w(group, whose === '' ? '' : gaugeName(whose));
            field.append(legend);
            for (const it of inside) {
                it.label = labelOf(it);
                if (group === 'loads' && !it.switch) { it.label = it.key.split('.')[0] + ', ' + it.label; }
                controls.set(it.key, it);
                field.append(group === 'power' ? plug(it) : it.switch ? tick(it) : slider(it));
            }
            if (group === 'settings') {
                field.append(button('declare-full', {act: 'set', 'gauge.declare': '100 %'}),
                    button('zero-now', {act: 'command', command: 'zero-adjustment'}));
            }
            box.append(field);
        }
    }
    function button(word, body) {
        const key = document.createElement('button');
        key.id = word;
        key.textContent = w(word);
        key.addEventListener('click', () => act(body));
        return key;
    }
    const idOf = it => 'set-' + it.key.replaceAll('.', '-');
    function plug(it) {
        const key = document.createElement('button');
        key.id = idOf(it);
        key.dataset.key = it.key;
        key.addEventListener('click', () => act({act: 'set', [it.key]: frame.set[it.key] === 1 ? 'off' : 'on'}));
        it.show = value => {
            const text = w(value === 1 ? 'pull' : 'plug', gaugeName(it.name));
            if (key.textContent !== text) { key.textContent = text; }
            key.setAttribute('aria-pressed', String(value !== 1));
        };
        return key;
    }
    function tick(it) {
        const label = document.createElement('label');
        label.className = 'switch';
        const input = document.createElement('input');
        input.type = 'checkbox';
        input.id = idOf(it);
        input.dataset.key = it.key;
        const [one, zero] = it.unit.split('|');
        input.addEventListener('change', () => act({act: 'set', [it.key]: input.checked ? one : zero}));
        label.append(input, it.label);
        it.show = value => { if (input.checked !== (value === 1)) { input.checked = value === 1; } };
        const row = document.createElement('div');
        row.append(label);
        return row;
    }
    /* Files write units that every keyboard has. */
    const unitText = text => text.replace(/\bu(?=[A-Z])/, 'µ').replace('Ohm', 'Ω');
    function slider(it) {
        const label = document.createElement('label');
        label.className = 'slide';
        const head = document.createElement('span');
        const out = document.createElement('output');
        out.setAttribute('aria-live', 'off');
        const input = document.createElement('input');
        input.type = 'range';
        input.id = idOf(it);
        // The label's first field is the output: without these two the slider has no name.
        label.htmlFor = input.id;
        input.setAttribute('aria-label', it.label);
        input.dataset.key = it.key;
        input.min = it.minimum;
        input.max = it.maximum;
        input.step = it.step;
        let held = -Infinity;
        let busy = false;
        let next = null;
        const unit = unitText(it.unit);
        const show = value => {
            out.textContent = sign(minus(String(value))) + ' ' + unit;
            input.setAttribute('aria-valuetext', out.textContent);
        };
        const send = async value => {
            if (busy) { next = value; return; }
            busy = true;
            await act({act: 'set', [it.key]: value + ' ' + it.unit});
            busy = false;
            if (next !== null) { const v = next; next = null; send(v); }
        };
        input.addEventListener('input', () => {
            held = performance.now();
            show(input.value);
            send(input.value);
        });
        head.append(it.label, out);
        label.append(head, input);
        it.show = value => {
            // A hand on the slider knows better than a frame that is on its way.
            if (performance.now() - held > 700 && (Number(input.value) !== value || out.textContent === '')) {
                input.value = value;
                show(value);
            }
        };
        return label;
    }

    function showChain() {
        const c = frame.chain;
        const group = n => minus(String(n)).replace(/\B(?=(\d{3})+(?!\d))/g, ' ');
        set('chain-microvolts', c ? fixed(c.microvolts, 2, 'µV') : '–');
        set('chain-counts', c ? group(c.counts) : '–');
        set('chain-microamps', c ? group(c.microamps) + ' µA' : '–');
        set('chain-nanocoulombs', c ? group(c.nanocoulombs) + ' nC' : '–');
        set('chain-amphours', c ? fixed(c.ampHours, 9, 'Ah') : '–');
    }

    /* One frame from the bench. */
    async function take(next) {
        const anew = frame === null || next.run !== frame.run;
        frame = next;
        if (anew) {
            await loadSetup();
        }
        updates++;
        document.body.dataset.state = frame.running ? 'running' : frame.ended ? 'ended' : 'paused';
        document.body.dataset.millis = frame.millis;
        set('clock', clock(frame.millis) + (frame.ended ? ' · ' + w('ended') : ''));
        set('play', w(frame.running ? 'pause' : 'play'));
        by('play').setAttribute('aria-pressed', String(frame.running));
        set('waiting', frame.waiting && !frame.running ? w('waiting') : '');
        const at = speeds.indexOf(frame.speed);
        if (at >= 0 && document.activeElement !== by('speed')) { by('speed').selectedIndex = at; }
        frame.gauges.forEach(showGauge);
        showTruth();
        showChain();
        for (const [key, it] of controls) { it.show(frame.set[key]); }
        benchChart.take(frame.history);
        chartWords();
        benchBook.look(frame, bookTools());
        pickLevel();
    }
    const bookTools = () => ({w, clock, controls, gaugeName, sign, minus, unitText});
    let spoken = -Infinity;
    let spokenRun = -1;
    function chartWords() {
        if (frame.run === spokenRun && performance.now() - spoken < 3000) { return; }
        spokenRun = frame.run;
        spoken = performance.now();
        const parts = frame.gauges.filter(g => g.power && g.percent !== null)
            .map(g => gaugeName(g.name) + ' ' + g.percent.toFixed(0) + ' %');
        set('chart-words', clock(frame.millis) + ': ' + parts.join(', ')
            + (frame.truth ? ', ' + w('truth') + ' ' + frame.truth.percent.toFixed(0) + ' %' : ''));
    }
    async function loadSetup() {
        const next = await (await fetch('/setup')).json();
        await benchLesson.knows(next.lesson);
        setup = next;
        set('title', setup.title);
        set('about', setup.lesson > 0 ? '' : setup.about + ' ' + w('start-here'));
        windows = setup.levels;
        buildGauges();
        buildControls();
        benchChart.build(setup.gauges.length, setup.strip);
        set('chart-head', w('chart-' + setup.strip.unit));
        benchBook.forget(setup.gauges, gaugeName);
        // A guess belongs to the run it was made for.
        by('guess').value = '';
        say('');
    }

    /* The stream: a browser joins again by itself and gets the whole past of the chart. */
    function listen(wanted) {
        if (source) { source.close(); }
        level = wanted;
        source = new EventSource('/events?level=' + level);
        let chain = Promise.resolve();
        source.addEventListener('frame', event => {
            const data = JSON.parse(event.data);
            chain = chain.then(() => take(data)).catch(e => console.error(e));
        });
        source.addEventListener('end', () => { over = true; source.close(); say(w('over')); });
        source.addEventListener('open', () => { if (by('status').textContent === w('lost')) { say(''); } });
        source.onerror = () => { if (over) { source.close(); } else { say(w('lost')); } };
        document.querySelectorAll('#windows button').forEach(b =>
            b.setAttribute('aria-pressed', String(Number(b.dataset.level) === chosenLevel)));
    }
    function pickLevel() {
        let wanted = chosenLevel;
        if (wanted < 0) {
            const at = speeds.findIndex(s => s >= frame.speed);
            wanted = [0, 1, 1, 2, 2, 3, 4][at < 0 ? 6 : at];
            // In a lesson all of its run is seen, at every speed; else what has passed, as well as it goes.
            if (setup.lesson > 0) {
                wanted = Math.max(0, windows.findIndex(it => it >= frame.endMillis));
            } else {
                while (wanted < 5 && frame.millis > windows[wanted] * 6) { wanted++; }
            }
        }
        if (wanted !== level) { listen(wanted); }
    }
    function buildWindows() {
        const box = by('windows');
        for (let i = -1; i < 6; i++) {
            const key = document.createElement('button');
            key.dataset.level = i;
            key.textContent = w(i < 0 ? 'window-auto' : 'window-' + i);
            key.addEventListener('click', () => choose(i));
            box.append(key);
        }
    }
    function choose(i) {
        chosenLevel = i;
        if (i >= 0) { listen(i); } else { level = -1; pickLevel(); listen(level); }
    }

    /* Keys and buttons. */
    function speedBy(n) {
        const at = speeds.indexOf(frame.speed) + n;
        if (at >= 0 && at < speeds.length) { act({act: 'speed', value: speeds[at]}); }
    }
    const toggle = () => act({act: frame.running ? 'pause' : 'play'});
    const reveal = () => act({act: 'reveal', value: !frame.revealed});
    function large() {
        const root = document.documentElement;
        const on = root.dataset.size !== 'large';
        if (on) { root.dataset.size = 'large'; } else { delete root.dataset.size; }
        by('large').setAttribute('aria-pressed', String(on));
        benchChart.restyle();
    }
    function theme() {
        const root = document.documentElement;
        const dark = root.dataset.theme ? root.dataset.theme === 'dark'
            : matchMedia('(prefers-color-scheme: dark)').matches;
        root.dataset.theme = dark ? 'light' : 'dark';
        benchChart.restyle();
    }
    const keys = {
        ' ': toggle, s: () => act({act: 'step'}), n: () => act({act: 'next-event'}), t: reveal,
        '+': () => speedBy(1), '-': () => speedBy(-1), l: large,
        1: () => choose(0), 2: () => choose(1), 3: () => choose(2), 4: () => choose(3),
        5: () => choose(4), 6: () => choose(5)
    };
    /* A key that the field with the focus needs itself: the guess its figures, a list its letters. */
    function isItsOwn(event) {
        const field = event.target.closest('input, select, button, .frame');
        if (!field) { return false; }
        if (field.matches('select')) { return true; }
        return event.key === ' ' || (field.matches('input[type=number]') && !/^[a-z]$/i.test(event.key));
    }
    function wire() {
        speeds.forEach((s, i) => by('speed').append(new Option(w('a-second', speedWords[i]), s)));
        by('play').addEventListener('click', toggle);
        by('reveal').addEventListener('click', reveal);
        by('guess').addEventListener('input', () => frame && showTruth());
        for (const id of ['step', 'next-event', 'to-end', 'reset']) {
            by(id).addEventListener('click', () => act({act: id}));
        }
        by('reset').addEventListener('click', benchLesson.restart);
        by('stop').addEventListener('click', () => { over = true; act({act: 'stop'}); });
        by('speed').addEventListener('change', () => act({act: 'speed', value: Number(by('speed').value)}));
        by('large').addEventListener('click', large);
        by('theme').addEventListener('click', theme);
        by('ledger-whose').addEventListener('change', () => frame
            && benchBook.choose(by('ledger-whose').selectedIndex, bookTools()));
        benchLesson.wire({act, by, set, say, w});
        addEventListener('resize', () => benchChart.size());
        matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => benchChart.restyle());
        document.addEventListener('keydown', event => {
            if (isItsOwn(event) || event.ctrlKey || event.metaKey || event.altKey || !frame) { return; }
            const key = keys[event.key.toLowerCase()];
            if (key) { event.preventDefault(); key(); }
        });
    }
    window.gaugebenchLive = {
        get frame() { return frame; },
        get setup() { return setup; },
        get updates() { return updates; },
        get level() { return level; },
        get points() { return benchChart.points(); },
        get connected() { return source !== null && source.readyState === EventSource.OPEN; },
        act
    };
    (async () => {
        words = await (await fetch('/words')).json();
        fillWords();
        buildWindows();
        wire();
        listen(2);
        benchLesson.open();
    })();
})();
