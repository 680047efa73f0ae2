'use strict';
/* The strip chart: charge and current on one time axis, from buckets that hold lowest and highest. */
window.benchChart = (() => {
    let charge = null;
    let amps = null;
    let width = 0;
    let first = 0;
    let level = -1;
    let buckets = [];
    let gauges = 0;
    /* What the upper strip shows: its axis, and where its figures stand; -1 is how full. */
    let strip = {lowest: 0, highest: 100, place: -1};
    const token = name => getComputedStyle(document.documentElement).getPropertyValue(name).trim();
    const pixels = name => parseFloat(token(name));
    const dashes = [[], [7, 4], [2, 3.2], [13, 3.5, 2, 3.5], [22, 6], [6, 3, 2, 3, 2, 3]];
    const time = (seconds, bySeconds) => {
        const d = Math.floor(seconds / 86400);
        const h = String(Math.floor(seconds / 3600) % 24).padStart(2, '0');
        const m = String(Math.floor(seconds / 60) % 60).padStart(2, '0');
        if (bySeconds) { return h + ':' + m + ':' + String(Math.floor(seconds) % 60).padStart(2, '0'); }
        return d > 0 ? (h + m === '0000' ? d + ' d' : d + ' d ' + h + ':' + m) : h + ':' + m;
    };
    /* Ticks that are less than a minute apart would else bear the same label. */
    const labels = at => at.map(it => time(it, at.some(each => each % 60 !== 0)));
    const hour = 3600;
    const steps = [10, 30, 60, 120, 300, 600, 1800, hour, 2 * hour, 3 * hour, 6 * hour, 12 * hour,
        ...[1, 2, 5, 10, 30, 60, 100, 200, 365, 730, 1826].map(days => days * 24 * hour)];
    const axes = () => {
        const common = {
            stroke: token('--soft'), grid: {stroke: token('--rule'), width: 1},
            ticks: {stroke: token('--rule')}, font: token('--text-small') + ' system-ui, sans-serif'};
        return [
            {...common, incrs: steps, values: (u, at) => labels(at), size: pixels('--text-small') * 2.2, space: 90},
            {...common, values: (u, at) => at.map(it => String(it).replace('-', '−')),
                size: pixels('--text-small') * 4}];
    };
    /* Half of the widest label that may stand under the right edge, "1000 d 12:00". */
    const beyond = () => Math.ceil(pixels('--text-small') * 3.6);
    function options(box, range, series, bands) {
        return {
            width: box.clientWidth, height: box.clientHeight, legend: {show: false},
            cursor: {sync: {key: 'bench'}, drag: {x: false, y: false}},
            scales: {x: {time: false}, y: {range}}, axes: axes(),
            padding: [null, beyond, null, null], series: [{}, ...series], bands};
    }
    function build(count, shown) {
        gauges = count;
        strip = shown;
        const chargeBox = document.getElementById('chart-charge');
        const ampsBox = document.getElementById('chart-amps');
        if (charge) { charge.destroy(); amps.destroy(); }
        const hair = {width: pixels('--pen-hair'), stroke: token('--band-edge'), points: {show: false}};
        // The band lies under the truth, and the truth is the bed of the readings.
        const series = [hair, hair,
            {width: pixels('--pen-truth'), stroke: token('--truth'), points: {show: false}}];
        for (let i = 0; i < count; i++) {
            series.push({width: pixels('--pen-reading'), stroke: token('--gauge-' + (i % 6 + 1)),
                dash: dashes[i % 6], points: {show: false}});
        }
        charge = new uPlot(options(chargeBox, upright, series,
            [{series: [2, 1], fill: token('--band')}]), columns(), chargeBox);
        amps = new uPlot(options(ampsBox, (u, low, high) => [Math.min(low ?? 0, -1), Math.max(high ?? 0, 1)],
            [{width: pixels('--pen-reading'), stroke: token('--gauge-1'), points: {show: false}}],
            []), currents(), ampsBox);
    }
    /* Each bucket is two points, its lowest and its highest: a spike is never lost. */
    const spread = (pick) => {
        const out = new Array(buckets.length * 2);
        for (let i = 0; i < buckets.length; i++) {
            out[2 * i] = pick(i, 0);
            out[2 * i + 1] = pick(i, 1);
        }
        return out;
    };
    const times = () => spread((i, end) => (first + i + end * 0.5) * width / 1000);
    const figure = at => spread((i, end) => buckets[i][2 * at + end]);
    /* The band is one of how full: beside anything else it is not drawn. */
    const nothing = () => spread(() => null);
    function columns() {
        const own = strip.place >= 0;
        const all = own ? [times(), nothing(), nothing(), figure(strip.place)]
            : [times(), figure(1), figure(2), figure(0)];
        for (let i = 0; i < gauges; i++) { all.push(figure(own ? strip.place + 1 + i : 4 + i)); }
        return all;
    }
    /* The pupils' sheet has the same axis. Only a line that leaves it makes it longer. */
    function upright(u) {
        let [low, high] = [strip.lowest, strip.highest];
        for (let i = 3; i < u.data.length; i++) {
            for (const value of u.data[i]) {
                if (value !== null && value < low) { low = value; }
                if (value !== null && value > high) { high = value; }
            }
        }
        return [low, high];
    }
    /* A gauge's pen as it is drawn, for the key. */
    function stroke(gauge) {
        const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
        const line = document.createElementNS('http://www.w3.org/2000/svg', 'line');
        for (const [name, value] of Object.entries({width: 46, height: 4, 'aria-hidden': 'true'})) {
            svg.setAttribute(name, value);
        }
        for (const [name, value] of Object.entries({x1: 0, x2: 46, y1: 2, y2: 2, 'stroke-width': 2,
            stroke: 'var(--gauge-' + (gauge % 6 + 1) + ')', 'stroke-dasharray': dashes[gauge % 6].join(' ')})) {
            line.setAttribute(name, value);
        }
        svg.append(line);
        return svg;
    }
    const currents = () => [times(), figure(3)];
    return {
        build,
        stroke,
        take(history) {
            const fresh = history.level !== level || history.first < first || buckets.length === 0
                || history.first > first + buckets.length;
            level = history.level;
            width = history.width;
            if (fresh) {
                buckets = history.buckets;
                first = history.first;
            } else {
                buckets.length = history.first - first;
                for (const bucket of history.buckets) { buckets.push(bucket); }
                if (buckets.length > 600) {
                    first += buckets.length - 600;
                    buckets.splice(0, buckets.length - 600);
                }
            }
            if (charge) {
                charge.setData(columns());
                amps.setData(currents());
            }
        },
        size() {
            for (const [plot, id] of [[charge, 'chart-charge'], [amps, 'chart-amps']]) {
                const box = document.getElementById(id);
                if (plot) { plot.setSize({width: box.clientWidth, height: box.clientHeight}); }
            }
        },
        restyle() { if (charge) { build(gauges, strip); } },
        points: () => buckets.length,
        /* What is drawn, for tests: of the upper strip times, band, truth and gauges. */
        drawn: () => charge.data,
        scale: () => [charge.scales.y.min, charge.scales.y.max],
        labels
    };
})();
