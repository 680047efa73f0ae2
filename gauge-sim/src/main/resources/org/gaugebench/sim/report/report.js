'use strict';
/* The report of a run. For tests and other scripts:
   - <html data-ready="yes"> once every strip is drawn;
   - [data-chart=charge|current|voltage|temperature|rule|hours|attribution], one for each strip,
     in figures [data-strip] with a key #key-NAME, a note #note-NAME, a table [data-values=NAME];
   - window.gaugebenchReport.{cursorMillis, fromMillis, toMillis}: the moment chosen (null for none)
     and the time that is seen;
   - #earlier #later #closer #wider #whole, #theme, #large, [data-gauge=0..5], .moment[data-at]. */
(function () {
    var data = GaugebenchData;
    var draw = GaugebenchCharts;
    var measure = GaugebenchAxes;
    var run = data.run();
    var root = document.documentElement;
    var THIN = '\u202f';
    var state = { from: 0, to: run.durationMillis, cursor: null };
    var least = Math.min(run.durationMillis, Math.max(10 * run.tickMillis, 1000));
    var shown = run.gauges.map(function () { return true; });
    var strips = [];
    var scale = 1;
    var aligning = false;

    window.gaugebenchReport = {
        get cursorMillis() { return state.cursor; },
        get fromMillis() { return state.from; },
        get toMillis() { return state.to; }
    };

    function byId(id) {
        return document.getElementById(id);
    }

    function visible() {
        return run.gauges.map(function (it, i) { return i; }).filter(function (i) {
            return shown[i];
        });
    }

    function withRule() {
        return visible().filter(function (i) { return run.rules[i]; });
    }

    /* The lines of a strip: what they are called, where they come from, how they are drawn. */
    function linesOf(name) {
        var lines = [];
        var truth = run.truth[name];
        if (name === 'state' && visible().length) {
            var leader = visible()[0];
            var reading = run.readings[leader];
            var whose = run.gauges.length > 1 ? ' of ' + run.gauges[leader] : '';
            lines.push({ data: reading.upper, pen: draw.edgePen(), band: 'upper' });
            lines.push({
                data: reading.lower, pen: draw.edgePen(), band: 'lower',
                label: 'error band' + whose, upper: reading.upper
            });
        }
        if (truth && truth.at.length) {
            lines.push({ data: truth, pen: draw.truthPen(name === 'state'), label: 'true' });
        }
        visible().slice().reverse().forEach(function (i) {
            lines.push({
                data: run.readings[i][name], pen: draw.gaugePen(i), label: run.gauges[i], gauge: i
            });
        });
        return lines;
    }

    function isKnown(line) {
        return line.data.value.some(function (it) { return it !== null; });
    }

    var KINDS = [
        { name: 'charge', of: 'state', unit: '%', digits: 2, height: 260, least: 2, floor: 0,
            ceiling: 100 },
        { name: 'current', of: 'current', unit: 'A', digits: 3, height: 150, least: 0.01,
            zero: true, noisy: true },
        { name: 'voltage', of: 'voltage', unit: 'V', digits: 3, height: 150, least: 0.05,
            noisy: true },
        { name: 'temperature', of: 'temperature', unit: '°C', digits: 1, height: 120, least: 2 },
        { name: 'rule', height: 70 },
        { name: 'hours', of: 'hours', unit: 'h', digits: 1, height: 150, least: 1, floor: 0,
            zero: true, isCut: true },
        { name: 'attribution', unit: 'Ah', digits: 4, height: 220, least: 0.001, zero: true }
    ];

    function note(name, words) {
        var place = byId('note-' + name);
        place.textContent = words;
        place.hidden = !words;
    }

    function gaugeColumns(strip) {
        return strip.lines.map(function (line, i) {
            return line.gauge === undefined ? 0 : i + 1;
        }).filter(Boolean);
    }

    function options(strip, count) {
        var numbers = strip.kind.name === 'charge';
        var scales = {
            x: { time: false, range: function () { return [state.from, state.to]; } },
            y: { range: measure.range(strip.kind, strip.kind.isCut && gaugeColumns(strip)) }
        };
        return {
            width: strip.width * scale,
            height: strip.height * scale,
            legend: { show: false },
            scales: scales,
            axes: measure.axes(scale, function (need) { return shared(strip, need); }),
            series: [{}],
            bands: [],
            padding: [8 * scale, measure.beyond(scale), 0, 0],
            cursor: {
                y: false,
                points: { show: false },
                drag: { x: true, y: false, setScale: false },
                bind: { dblclick: function () { return function () { whole(); return null; }; } }
            },
            hooks: {
                draw: [draw.moments(run, scale, numbers), function () {
                    strip.drawn = true;
                    align();
                }],
                setSelect: [function (u) {
                    if (u.select.width > 4) {
                        var from = u.posToVal(u.select.left, 'x');
                        var to = u.posToVal(u.select.left + u.select.width, 'x');
                        u.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
                        show(from, to);
                    }
                }],
                setCursor: [function (u) {
                    /* A new scale tells the last move of the mouse again, at another time. */
                    var isNew = u.cursor.event && u.cursor.event !== strip.event;
                    strip.event = u.cursor.event;
                    if (!strip.silent && u.cursor.left >= 0 && isNew) {
                        choose(u.posToVal(u.cursor.left, 'x'), strip);
                    }
                }]
            }
        };
    }

    /* What each strip needs beside its values; the widest need is the room of all. */
    function shared(strip, need) {
        strip.need = need;
        strip.room = strips.reduce(function (most, it) {
            return Math.max(most, it.need || 0);
        }, need);
        return strip.room;
    }

    /* Once all are drawn, those that were drawn before a wider one are drawn again. */
    function align() {
        if (aligning) {
            return;
        }
        aligning = true;
        queueMicrotask(function () {
            aligning = false;
            strips.forEach(function (strip) {
                if (strip.room !== shared(strip, strip.need)) {
                    strip.plot.redraw(true, true);
                }
            });
        });
    }

    function build(kind) {
        var place = byId('chart-' + kind.name);
        if (!place) {
            return;
        }
        var strip = { kind: kind, place: place, drawn: false, silent: false };
        var figure = place.parentElement;
        strip.lines = kind.of ? linesOf(kind.of).filter(isKnown) : [];
        var isEmpty = kind.name === 'rule' ? !withRule().length
            : kind.of ? !strip.lines.length : !run.attribution;
        key(strip);
        notes(strip, isEmpty);
        place.hidden = isEmpty;
        figure.querySelector('.values').hidden = isEmpty;
        if (isEmpty) {
            return;
        }
        var rows = kind.name === 'rule' ? withRule().length : 1;
        strip.width = scale === 1 ? place.clientWidth : 680;
        strip.height = kind.height * (scale === 1 ? draw.size('text') / 16 : 1);
        if (rows > 1) {
            strip.height = 32 + 46 * rows;
        }
        var opts = options(strip);
        var table;
        if (kind.of) {
            strip.lines.forEach(function (line, i) {
                opts.series.push(draw.series(line.pen, scale));
                if (line.band === 'lower') {
                    opts.bands.push({
                        series: [i, i + 1],
                        fill: function () { return draw.token('band'); }
                    });
                }
            });
            var drawn = strip.lines.map(function (line) { return line.data; });
            if (kind.noisy && isKnown({ data: run.truth[kind.of] })) {
                opts.series.push(draw.series(draw.coreOfTruth(), scale));
                drawn.push(run.truth[kind.of]);
            }
            if (kind.isCut) {
                opts.hooks.draw.unshift(measure.goesOn(run.truth[kind.of], scale));
            }
            table = data.joined(drawn, run.durationMillis);
        } else if (kind.name === 'rule') {
            opts.axes[1].values = function (u, splits) { return splits.map(function () {}); };
            opts.axes[1].grid = { show: false };
            opts.axes[1].ticks = { show: false };
            opts.scales.y = { range: [0, 1] };
            opts.series.push({ show: false });
            opts.hooks.draw.unshift(draw.lanes(run, withRule, scale));
            table = [[0, run.durationMillis], [null, null]];
        } else {
            opts.hooks.drawClear = [draw.areas(run, scale)];
            [1, 2].forEach(function () {
                opts.series.push({ stroke: 'transparent', width: 0, points: { show: false } });
            });
            opts.series.push(Object.assign(
                draw.series({ token: 'ink', width: 'pen-reading', dash: [] }, scale)));
            table = sums();
        }
        strip.table = table;
        place.textContent = '';
        strip.plot = new uPlot(opts, table, place);
        strip.plot.root.setAttribute('aria-hidden', 'true');
        drags(strip);
        strips.push(strip);
    }

    function sums() {
        var table = [[], [], [], []];
        run.attribution.moments.forEach(function (moment) {
            var up = 0;
            var down = 0;
            moment.slice(1, 7).forEach(function (part) {
                up += Math.max(0, part) / 1e6;
                down += Math.min(0, part) / 1e6;
            });
            var known = moment.length > 1;
            table[0].push(moment[0]);
            table[1].push(known ? up : null);
            table[2].push(known ? down : null);
            table[3].push(known ? moment[7] / 1e6 : null);
        });
        return table;
    }

    function notes(strip, isEmpty) {
        var name = strip.kind.name;
        var words = '';
        if (isEmpty) {
            words = name === 'rule' ? 'No gauge that is shown has this rule.'
                : 'Never known in this run.';
        } else if (name === 'hours' && !run.starved.length) {
            words = 'The loads are met to the end of the run, so there is no true end to hold these'
                + ' hours against.';
        } else if (name === 'hours') {
            words = 'True: until the loads first ask for more than there is, as this run goes on.'
                + ' Where that line leaves the strip and there is room, an arrow says how far it'
                + ' goes.';
        } else if (name === 'rule') {
            words = 'No bar: not armed. A third: waiting. Two thirds, hatched: paused. Whole'
                + ' height: holding.';
        }
        note(name, words);
    }

    function swatch(pen, isBand) {
        var dash = pen.dash.length ? ' stroke-dasharray="' + pen.dash.join(' ') + '"' : '';
        var line = '<line x1="0" x2="40" y1="8" y2="8" stroke="var(--' + pen.token
            + ')" stroke-width="' + draw.size(pen.width) + '"' + dash + '/>';
        var box = '<rect x="0" y="2" width="40" height="12" fill="var(--band)" '
            + 'stroke="var(--band-edge)"/>';
        return '<svg viewBox="0 0 40 16" aria-hidden="true">' + (isBand ? box : line) + '</svg>';
    }

    function item(markup, words) {
        var li = document.createElement('li');
        li.innerHTML = markup;
        li.appendChild(document.createTextNode(words + ' '));
        var value = document.createElement('b');
        li.appendChild(value);
        return { li: li, value: value };
    }

    function key(strip) {
        var list = byId('key-' + strip.kind.name);
        list.textContent = '';
        strip.values = [];
        function add(markup, words, read) {
            var it = item(markup, words);
            list.appendChild(it.li);
            strip.values.push({ place: it.value, read: read, words: words });
        }
        var unit = THIN + strip.kind.unit;
        var digits = strip.kind.digits;
        strip.lines.slice().reverse().sort(function (a, b) {
            return order(a) - order(b);
        }).forEach(function (line) {
            if (line.band === 'upper') {
                return;
            }
            add(swatch(line.pen, line.band), line.label, function (millis) {
                var value = data.valueAt(line.data, millis);
                if (value === null) {
                    return 'not known';
                }
                var text = data.figure(value, digits);
                if (line.band) {
                    var upper = data.valueAt(line.upper, millis);
                    text += upper === null ? '' : ' to ' + data.figure(upper, digits);
                }
                return text + unit;
            });
        });
        if (strip.kind.name === 'rule') {
            withRule().forEach(function (gauge) {
                add('', run.gauges[gauge], function (millis) {
                    var code = data.valueAt(run.rules[gauge], millis, true);
                    return code === null ? 'no power'
                        : run.ruleStates[Math.floor(code / run.ruleReasonCount)] + ': '
                            + run.ruleReasons[code % run.ruleReasonCount];
                });
            });
        }
        if (strip.kind.name === 'attribution' && run.attribution) {
            run.attribution.causes.concat('the whole error').forEach(function (words, i) {
                var whole = i === draw.CAUSES.length;
                add(whole ? swatch({ token: 'ink', width: 'pen-reading', dash: [] })
                    : area(draw.CAUSES[i], i % 2), words, function (millis) {
                    var moments = run.attribution.moments;
                    var at = moments.map(function (it) { return it[0]; });
                    var it = moments[data.nearest({ at: at, value: at }, millis)];
                    return it.length > 1 ? data.figure(it[i + 1] / 1e6, digits) + unit
                        : 'not known';
                });
            });
        }
    }

    function area(cause, hatched) {
        var colour = 'var(--cause-' + cause + ')';
        var lines = '';
        for (var x = -12; hatched && x < 40; x += 6) {
            lines += '<line x1="' + x + '" y1="14" x2="' + (x + 12) + '" y2="2" stroke="' + colour
                + '" stroke-width="1.6"/>';
        }
        return '<svg viewBox="0 0 40 16" aria-hidden="true"><rect x="0.5" y="2" width="39" '
            + 'height="12" stroke="' + colour + '" fill="' + (hatched ? 'none' : colour) + '"/>'
            + lines + '</svg>';
    }

    /* True first, then gauges in their order, then the band. */
    function order(line) {
        return line.band ? 100 : line.gauge === undefined ? -1 : line.gauge;
    }

    function tell() {
        byId('cursor-time').textContent =
            state.cursor === null ? 'no moment chosen' : data.moment(state.cursor);
        strips.forEach(function (strip) {
            strip.values.forEach(function (it) {
                it.place.textContent = state.cursor === null ? '' : it.read(state.cursor);
            });
        });
    }

    /* Nothing is known between two ticks, so no moment lies there. */
    function onTick(millis) {
        return Math.round(millis / run.tickMillis) * run.tickMillis;
    }

    function choose(millis, from) {
        state.cursor = millis === null ? null
            : Math.max(0, Math.min(run.durationMillis, onTick(millis)));
        strips.forEach(function (strip) {
            if (strip === from) {
                return;
            }
            strip.silent = true;
            strip.plot.setCursor(
                state.cursor === null ? { left: -10, top: -10 }
                    : { left: strip.plot.valToPos(state.cursor, 'x'), top: 1 }, false);
            strip.silent = false;
        });
        tell();
    }

    function show(from, to) {
        var width = Math.max(least, Math.min(run.durationMillis, to - from));
        var middle = (from + to) / 2;
        var start = Math.max(0, Math.min(run.durationMillis - width, middle - width / 2));
        state.from = Math.max(0, onTick(start));
        state.to = Math.min(run.durationMillis, state.from + onTick(width));
        strips.forEach(function (strip) {
            strip.plot.setScale('x', { min: state.from, max: state.to });
        });
        byId('range').textContent =
            'Seen: ' + data.moment(state.from) + ' to ' + data.moment(state.to);
        /* A chart takes its new scale after this script: its line of the moment waits for that. */
        queueMicrotask(function () { choose(state.cursor); });
        fillTables();
    }

    function whole() {
        show(0, run.durationMillis);
    }

    /* Closer is closer to the moment that is chosen: it comes to the middle, so that what led to it
       is seen as well as what followed. Without one that is seen, the middle stays. */
    function zoom(factor) {
        var isSeen = state.cursor !== null && state.cursor >= state.from
            && state.cursor <= state.to;
        var at = isSeen ? state.cursor : (state.from + state.to) / 2;
        var width = state.to - state.from;
        var next = Math.max(least, Math.min(run.durationMillis, width * factor));
        var part = factor < 1 ? 0.5 : (at - state.from) / width;
        show(at - part * next, at - part * next + next);
    }

    function pan(part) {
        var by = (state.to - state.from) * part;
        by = Math.max(-state.from, Math.min(run.durationMillis - state.to, by));
        show(state.from + by, state.to + by);
    }

    function move(part) {
        var width = state.to - state.from;
        var next = state.cursor === null ? (state.from + state.to) / 2
            : state.cursor + Math.sign(part) * Math.max(run.tickMillis, Math.abs(part) * width);
        next = Math.max(0, Math.min(run.durationMillis, next));
        if (next < state.from) {
            pan((next - state.from) / width - 0.1);
        } else if (next > state.to) {
            pan((next - state.to) / width + 0.1);
        }
        choose(next);
    }

    function event(way) {
        var all = [].concat.apply(run.failures, run.events.map(function (it) {
            return it.slice(1);
        })).sort(function (a, b) { return a - b; });
        var now = state.cursor === null ? (way > 0 ? -1 : Infinity) : state.cursor;
        var next = all.filter(function (it) { return way > 0 ? it > now : it < now; });
        if (next.length) {
            goTo(way > 0 ? next[0] : next[next.length - 1]);
        }
    }

    function goTo(millis) {
        if (millis < state.from || millis > state.to) {
            var half = (state.to - state.from) / 2;
            show(millis - half, millis + half);
        }
        choose(millis);
    }

    /* Shift and drag, or a finger, moves the paper. */
    function drags(strip) {
        var over = strip.plot.over;
        var from = null;
        over.parentElement.addEventListener('mousedown', function (e) {
            if (e.shiftKey) {
                e.stopPropagation();
                from = { x: e.clientX, from: state.from, to: state.to };
            }
        }, true);
        over.addEventListener('touchstart', function (e) {
            if (e.touches.length === 1) {
                from = { x: e.touches[0].clientX, from: state.from, to: state.to };
                choose(strip.plot.posToVal(
                    e.touches[0].clientX - over.getBoundingClientRect().left, 'x'));
            }
        }, { passive: true });
        function go(x) {
            if (from) {
                var by = (from.x - x) / over.clientWidth * (from.to - from.from);
                by = Math.max(-from.from, Math.min(run.durationMillis - from.to, by));
                show(from.from + by, from.to + by);
            }
        }
        strip.go = function (e) {
            go(e.touches ? e.touches[0].clientX : e.clientX);
        };
        strip.stop = function () { from = null; };
        over.addEventListener('touchmove', strip.go, { passive: true });
        over.addEventListener('touchend', strip.stop);
    }

    document.addEventListener('mousemove', function (e) {
        strips.forEach(function (strip) { strip.go(e); });
    });
    document.addEventListener('mouseup', function () {
        strips.forEach(function (strip) { strip.stop(); });
    });

    var KEYS = {
        ArrowLeft: function (e) { move(e.shiftKey ? -0.05 : -0.005); },
        ArrowRight: function (e) { move(e.shiftKey ? 0.05 : 0.005); },
        '+': function () { zoom(0.5); },
        '=': function () { zoom(0.5); },
        '-': function () { zoom(2); },
        PageUp: function () { pan(-0.5); },
        PageDown: function () { pan(0.5); },
        n: function () { event(1); },
        p: function () { event(-1); },
        Home: whole,
        0: whole,
        Escape: function () { choose(null); }
    };
    byId('charts').addEventListener('keydown', function (e) {
        var act = KEYS[e.key.length === 1 ? e.key.toLowerCase() : e.key];
        var isField = /^(INPUT|SELECT|TEXTAREA)$/.test(e.target.tagName);
        if (act && !isField && !e.ctrlKey && !e.metaKey && !e.altKey) {
            act(e);
            e.preventDefault();
        }
    });

    /* A table of what is seen: even steps of time, made when it is opened. */
    function fillTables() {
        document.querySelectorAll('.values[open]').forEach(fillTable);
    }

    function fillTable(details) {
        var name = details.dataset.values;
        var strip = strips.filter(function (it) { return it.kind.name === name; })[0];
        var place = details.querySelector('.wide');
        place.textContent = '';
        if (!strip) {
            return;
        }
        var table = document.createElement('table');
        table.className = 'ledger';
        var rows = 24;
        var heads = table.createTHead().insertRow();
        ['Time'].concat(strip.values.map(function (it) { return it.words; })).forEach(
            function (words, i) {
                var th = document.createElement('th');
                th.scope = 'col';
                th.className = i ? 'figure' : '';
                th.textContent = words;
                heads.appendChild(th);
            });
        var body = table.createTBody();
        for (var i = 0; i <= rows; i++) {
            var millis = onTick(state.from + (state.to - state.from) * i / rows);
            var row = body.insertRow();
            row.insertCell().textContent = data.moment(millis);
            strip.values.forEach(function (it) {
                var cell = row.insertCell();
                cell.className = 'figure';
                cell.textContent = it.read(millis);
            });
        }
        place.appendChild(table);
    }

    document.querySelectorAll('.values').forEach(function (details) {
        details.addEventListener('toggle', function () {
            if (details.open) {
                fillTable(details);
            }
        });
    });

    function rebuild() {
        strips.forEach(function (strip) { strip.plot.destroy(); });
        strips = [];
        KINDS.forEach(build);
        show(state.from, state.to);
    }

    function redraw() {
        strips.forEach(function (strip) { strip.plot.redraw(false); });
    }

    function buttons() {
        var acts = {
            earlier: function () { pan(-0.5); },
            later: function () { pan(0.5); },
            closer: function () { zoom(0.5); },
            wider: function () { zoom(2); },
            whole: whole
        };
        Object.keys(acts).forEach(function (id) {
            byId(id).addEventListener('click', acts[id]);
        });
        byId('theme').addEventListener('change', function (e) {
            if (e.target.value) {
                root.dataset.theme = e.target.value;
            } else {
                delete root.dataset.theme;
            }
            redraw();
        });
        byId('large').addEventListener('change', function (e) {
            if (e.target.checked) {
                root.dataset.size = 'large';
            } else {
                delete root.dataset.size;
            }
            rebuild();
        });
        matchMedia('(prefers-color-scheme: dark)').addEventListener('change', redraw);
        document.addEventListener('click', function (e) {
            if (e.target.matches && e.target.matches('.moment')) {
                goTo(Number(e.target.dataset.at));
                byId('charts').scrollIntoView({ block: 'start' });
                byId('chart-charge').focus({ preventScroll: true });
            }
        });
        document.querySelectorAll('[data-gauge]').forEach(function (box) {
            box.addEventListener('change', function () {
                shown[Number(box.dataset.gauge)] = box.checked;
                rebuild();
            });
        });
    }

    /* Paper is light, whatever the screen is, and drawn twice as large for sharp lines. */
    var before = '';
    window.addEventListener('beforeprint', function () {
        before = root.dataset.theme || '';
        root.dataset.theme = 'light';
        scale = 2;
        rebuild();
    });
    window.addEventListener('afterprint', function () {
        if (before) {
            root.dataset.theme = before;
        } else {
            delete root.dataset.theme;
        }
        scale = 1;
        rebuild();
    });

    var width = 0;
    new ResizeObserver(function () {
        var now = byId('charts').clientWidth;
        if (now !== width && scale === 1) {
            width = now;
            strips.forEach(function (strip) {
                strip.width = strip.place.clientWidth;
                strip.plot.setSize({ width: strip.width, height: strip.height });
            });
        }
    }).observe(byId('charts'));

    buttons();
    rebuild();
    requestAnimationFrame(function ready() {
        if (strips.every(function (strip) { return strip.drawn; })) {
            performance.mark('drawn');
            root.dataset.ready = 'yes';
        } else {
            requestAnimationFrame(ready);
        }
    });
})();
