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
    const token = name => getComputedStyle(document.documentElement).getPropertyValue(name).trim();
    const pixels = name => parseFloat(token(name));
    const dashes = [[], [7, 4], [2, 3.2], [13, 3.5, 2, 3.5], [22, 6], [6, 3, 2, 3, 2, 3]];
    const time = seconds => {
        const d = Math.floor(seconds / 86400);
        const h = String(Math.floor(seconds / 3600) % 24).padStart(2, '0');
        const m = String(Math.floor(seconds / 60) % 60).padStart(2, '0');
        return d > 0 ? (h + m === '0000' ? d + ' d' : d + ' d ' + h + ':' + m) : h + ':' + m;
    };
    const hour = 3600;
    const steps = [10, 30, 60, 120, 300, 600, 1800, hour, 2 * hour, 3 * hour, 6 * hour, 12 * hour,
        ...[1, 2, 5, 10, 30, 60, 100, 200, 365, 730, 1826].map(days => days * 24 * hour)];
    const axes = () => {
        const common = {
            stroke: token('--soft'), grid: {stroke: token('--rule'), width: 1},
            ticks: {stroke: token('--rule')}, font: token('--text-small') + ' system-ui, sans-serif'};
        return [
            {...common, incrs: steps, values: (u, at) => at.map(time), size: pixels('--text-small') * 2.2, space: 90},
            {...common, size: pixels('--text-small') * 4}];
    };
    function options(box, range, series, bands) {
        return {
            width: box.clientWidth, height: box.clientHeight, legend: {show: false},
            cursor: {sync: {key: 'bench'}, drag: {x: false, y: false}},
            scales: {x: {time: false}, y: {range}}, axes: axes(), series: [{}, ...series], bands};
    }
    function build(count) {
        gauges = count;
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
        charge = new uPlot(options(chargeBox, () => [0, 100], series,
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
    function columns() {
        const all = [times(), figure(1), figure(2), figure(0)];
        for (let i = 0; i < gauges; i++) { all.push(figure(4 + i)); }
        return all;
    }
    const currents = () => [times(), figure(3)];
    return {
        build,
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
        restyle() { if (charge) { build(gauges); } },
        points: () => buckets.length
    };
})();
