'use strict';
/* The account book and the list of events; what stands in them comes from /book. */
window.benchBook = (() => {
    let asked = false;
    let wanted = false;
    let shown = '';
    /* Whose book is open, by its place; a reader chooses, and the next run begins with the first. */
    let whose = 0;
    /* Events whose figure is a step of the count. */
    const steps = new Set(['set-to-full', 'set-to-empty', 'corrected-by-rest', 'settings-changed',
        'new-battery']);
    const cell = (row, text, figure) => {
        const td = document.createElement('td');
        td.textContent = text;
        if (figure) { td.className = 'figure'; }
        row.append(td);
    };
    const ampHours = (value, sign) => value === null || value === undefined ? '–'
        : (value <= -0.005 ? '−' : '') + sign(Math.abs(value).toFixed(2));
    /* To hundredths, outward: a band never looks narrower than it is. They come in millionths. */
    function bandText(entry, tools) {
        const hundredths = (value, round) => round(Math.round(value * 1e6) / 1e4) / 100;
        return tools.w('from-to', ampHours(hundredths(entry.lower, Math.floor), tools.sign),
            ampHours(hundredths(entry.upper, Math.ceil), tools.sign));
    }
    /* What four places show as nothing is left out: a line of zeros tells nobody anything. */
    const least = 0.00005;
    const amount = (value, sign) => value < least ? '' : sign(value.toFixed(value < 0.1 ? 4 : 2));
    function when(entry, tools) {
        const w = tools.w;
        if (entry.grain === 'day') { return w('day', Math.floor(entry.from / 86400000) + 1); }
        if (entry.grain === 'month') { return w('month', tools.clock(entry.from)); }
        if (entry.grain === 'before') { return w('before'); }
        if (entry.grain === 'open') { return w('open-entry'); }
        return tools.clock(entry.to);
    }
    function lineName(cause, w) {
        const colon = cause.indexOf(':');
        if (colon > 0) { return cause.slice(colon + 1); }
        return w(cause.replace('step:', 'step-'));
    }
    function rows(book, tools) {
        const body = document.createDocumentFragment();
        for (const entry of book.entries) {
            const told = entry.lines.filter(line => line[1] >= least || line[2] >= least);
            const lines = told.length > 0 ? told : [['', 0, 0]];
            lines.forEach((line, i) => {
                const row = document.createElement('tr');
                row.dataset.grain = entry.grain;
                row.dataset.cause = line[0];
                if (i === 0) { row.classList.add('first'); }
                if (entry.grain === 'open') { row.classList.add('open'); }
                cell(row, i === 0 ? when(entry, tools) : '');
                cell(row, lineName(line[0], tools.w));
                cell(row, amount(line[1], tools.sign), true);
                cell(row, amount(line[2], tools.sign), true);
                cell(row, i === 0 ? ampHours(entry.gauge, tools.sign) : '', true);
                cell(row, i === 0 && entry.lower !== null
                    ? bandText(entry, tools) : '', true);
                cell(row, i === 0 && 'truth' in entry ? ampHours(entry.truth, tools.sign) : '', true);
                body.append(row);
            });
        }
        document.getElementById('ledger-rows').replaceChildren(body);
    }
    /* A value of a scenario file as people read it: its word, or its figure and unit. */
    function valueText(text, tools) {
        const figure = /^([-\d.]+) (.*)$/.exec(text);
        return figure ? tools.sign(tools.minus(figure[1])) + ' ' + tools.unitText(figure[2])
            : text.replaceAll('-', ' ');
    }
    /* What was changed, called as its control is, and to what. */
    function changeText(event, tools) {
        const {target, control: key, name, text} = event.what;
        const control = tools.controls.get(key);
        if (target === 'gauge-power') { return tools.w(event.value === 1 ? 'power-back' : 'power-gone'); }
        if (control && control.switch) {
            // The label of such a box is its one state; what it moves has a name of its own.
            const named = control.word === 'isolator' || control.word === 'reversed'
                ? tools.w('part-' + control.word) : control.label;
            return named + ': ' + tools.w('s-' + control.unit.split('|')[event.value === 1 ? 0 : 1]);
        }
        return control ? control.label + ' → ' + valueText(text, tools)
            : tools.w('changed-' + target, name.replaceAll('-', ' ').replace('.', ', '), valueText(text, tools));
    }
    function eventText(event, tools) {
        const who = tools.gaugeName(event.who);
        if (event.what) { return (event.who ? who + ': ' : '') + changeText(event, tools); }
        const step = steps.has(event.event) && event.value !== 0
            ? ' (' + (event.value > 0 ? '+' : '−') + tools.sign(Math.abs(event.value / 3.6e12).toFixed(2)) + ' Ah)' : '';
        const what = event.fault ? tools.w('fault-' + event.fault) : tools.w('event-' + event.event);
        return who + ': ' + what + step;
    }
    function events(book, tools) {
        const list = document.createDocumentFragment();
        for (const event of book.events) {
            const item = document.createElement('li');
            item.dataset.event = event.event || 'change';
            const time = document.createElement('time');
            time.textContent = tools.clock(event.millis);
            const text = document.createElement('span');
            text.textContent = (event.warning ? '! ' : '') + eventText(event, tools);
            if (event.warning) { text.className = 'doubt'; }
            item.append(time, text);
            list.append(item);
        }
        document.getElementById('event-rows').replaceChildren(list);
    }
    async function fetchBook(tools) {
        asked = true;
        wanted = false;
        try {
            const book = await (await fetch('/book/' + whose)).json();
            rows(book, tools);
            events(book, tools);
        } catch (e) {
            shown = '';
        }
        // At most three times a second: a person reads no faster.
        setTimeout(() => { asked = false; if (wanted) { fetchBook(tools); } }, 330);
    }
    return {
        look(frame, tools) {
            const key = [frame.run, frame.book, frame.events, frame.revealed,
                frame.running ? Math.floor(performance.now() / 1000) : frame.version].join();
            if (key === shown) { return; }
            shown = key;
            if (asked) { wanted = true; } else { fetchBook(tools); }
        },
        /* Another run: its gauges, and the book of the first. */
        forget(gauges, nameOf) {
            shown = '';
            whose = 0;
            const choose = document.getElementById('ledger-whose');
            choose.replaceChildren(...gauges.map((gauge, i) => new Option(nameOf(gauge.name), i)));
            choose.closest('p').hidden = gauges.length < 2;
        },
        choose(place, tools) {
            whose = place;
            shown = '';
            if (asked) { wanted = true; } else { fetchBook(tools); }
        }
    };
})();
