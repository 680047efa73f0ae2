'use strict';
/* Pictures of an answer, drawn from its figures in the page's own pens: light, dark and on paper. */
const systemChart = (() => {
    const SPACE = 'http://www.w3.org/2000/svg';
    const WIDTH = 560;
    function add(parent, name, attributes, text) {
        const made = document.createElementNS(SPACE, name);
        for (const [key, value] of Object.entries(attributes)) { made.setAttribute(key, String(value)); }
        if (text !== undefined) { made.textContent = text; }
        parent.append(made);
        return made;
    }
    function paper(height, label, width = WIDTH) {
        const svg = document.createElementNS(SPACE, 'svg');
        svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
        svg.setAttribute('class', 'chart');
        svg.setAttribute('role', 'img');
        svg.setAttribute('aria-label', label);
        return svg;
    }
    const keep = value => Math.max(0, Math.min(100, value));
    const line = points => points.map((p, i) => (i === 0 || points[i - 1] === null ? 'M' : 'L')
        + p[0].toFixed(1) + ' ' + p[1].toFixed(1)).join('');
    function steps(span) {
        for (const step of [1, 2, 5, 10, 20]) { if (span / step <= 6) { return step; } }
        return 50;
    }

    /* What is shown against what is left, with how far off it could be and the day to charge by. */
    function month(part, label, words, width) {
        const wide = Math.max(320, Math.min(WIDTH, width || WIDTH));
        const left = 44;
        const right = wide - 10;
        const top = 24;
        const bottom = 224;
        const svg = paper(270, label, wide);
        const days = part.points[part.points.length - 1][0];
        const shown = part.points.filter(p => p[2] !== null);
        const band = (p, way) => keep(p[2] - (part.tooHighPerDay + way * part.eitherWayPerDay) * p[0]);
        const all = shown.flatMap(p => [p[2], band(p, 1), band(p, -1)]).concat(part.points.map(p => p[1]));
        let low = Math.min(...all);
        let high = Math.max(...all);
        const step = steps(high - low || 1);
        low = Math.floor(low / step) * step;
        high = Math.max(low + step, Math.ceil(high / step) * step);
        const x = day => left + (right - left) * day / days;
        const y = value => bottom - (bottom - top) * (value - low) / (high - low);
        const upper = shown.map(p => [x(p[0]), y(band(p, -1))]);
        const lower = shown.map(p => [x(p[0]), y(band(p, 1))]).reverse();
        if (upper.length > 0) {
            add(svg, 'path', {class: 'band', d: line(upper.concat(lower)) + 'Z'});
        }
        for (let value = low; value <= high; value += step) {
            add(svg, 'path', {class: 'rule', d: `M${left} ${y(value)}H${right}`});
            add(svg, 'text', {x: left - 6, y: y(value) + 5, 'text-anchor': 'end'}, String(value));
        }
        const each = days > 15 && wide < 450 ? 10 : days > 6 ? 5 : 1;
        for (let day = 0; day <= days; day += each) {
            add(svg, 'path', {class: 'axis', d: `M${x(day)} ${bottom}v5`});
            add(svg, 'text', {x: x(day), y: bottom + 20, 'text-anchor': 'middle'}, String(day));
        }
        add(svg, 'path', {class: 'axis', d: `M${left} ${bottom}H${right}`});
        add(svg, 'text', {x: 0, y: 14, class: 'soft'}, words.percent);
        add(svg, 'text', {x: right, y: bottom + 38, 'text-anchor': 'end', class: 'soft'}, words.days);
        add(svg, 'path', {class: 'truth', d: line(part.points.map(p => [x(p[0]), y(p[1])]))});
        add(svg, 'path', {class: 'own', d: line(shown.map(p => [x(p[0]), y(p[2])]))});
        const by = part.chargeByDay;
        if (by > 0 && by <= days) {
            add(svg, 'path', {class: 'mark', d: `M${x(by)} ${top - 4}V${bottom}`});
            const late = x(by) > (left + right) / 2;
            add(svg, 'text', {x: x(by) + (late ? -7 : 7), y: top - 8,
                'text-anchor': late ? 'end' : 'start'}, words.chargeBy);
        }
        return svg;
    }

    /* One bar for each shunt: what a microvolt costs on it. */
    function bars(part, label, word, width) {
        const wide = Math.max(320, Math.min(WIDTH, width || WIDTH));
        const row = 52;
        const svg = paper(part.bars.length * row + 4, label, wide);
        const most = Math.max(...part.bars.map(bar => bar.value), 1e-12);
        part.bars.forEach((bar, i) => {
            const top = i * row;
            const long = Math.max(2, (wide - 90) * bar.value / most);
            add(svg, 'text', {x: 0, y: top + 16}, bar.label + ', ' + word(bar.note));
            add(svg, 'rect', {class: 'bar' + (bar.chosen ? ' chosen' : ''), x: 0.5, y: top + 22.5,
                width: long, height: 18});
            add(svg, 'text', {x: long + 8, y: top + 37}, bar.shown);
        });
        return svg;
    }
    return {month, bars};
})();
