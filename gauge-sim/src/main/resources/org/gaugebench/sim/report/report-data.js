'use strict';
/* The run as arrays: what stands packed in the page is unpacked here. A line is {at, value}: times
   in milliseconds, and values, null where there was none. */
var GaugebenchData = (function () {
    function numbers(text) {
        var bytes = atob(text);
        var all = [];
        var value = 0;
        var weight = 1;
        for (var i = 0; i < bytes.length; i++) {
            var byte = bytes.charCodeAt(i);
            value += (byte & 127) * weight;
            weight *= 128;
            if (byte < 128) {
                all.push(value);
                value = 0;
                weight = 1;
            }
        }
        return all;
    }

    function line(text, step, tickMillis, longest) {
        var all = numbers(text);
        var at = [];
        var value = [];
        var tick = 0;
        var last = 0;
        for (var i = 0; i < all.length; ) {
            var first = all[i++];
            tick += Math.floor(first / 2);
            at.push(Math.min(tick * tickMillis, longest));
            if (first % 2) {
                value.push(null);
            } else {
                var odd = all[i] % 2;
                last += odd ? -(all[i] + 1) / 2 : all[i] / 2;
                i++;
                value.push(last * step);
            }
        }
        return { at: at, value: value };
    }

    /* The nearest point of a line, or the one that holds at a moment for lines of steps. */
    function nearest(it, millis, isStep) {
        var low = 0;
        var high = it.at.length - 1;
        while (low < high) {
            var middle = (low + high + 1) >> 1;
            if (it.at[middle] <= millis) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        if (!isStep && low + 1 < it.at.length && it.value[low] !== null) {
            if (it.at[low + 1] - millis < millis - it.at[low] && it.value[low + 1] !== null) {
                return low + 1;
            }
        }
        return low;
    }

    function valueAt(it, millis, isStep) {
        return it.at.length ? it.value[nearest(it, millis, isStep)] : null;
    }

    /* One table of times for several lines. Where a line has no point stands undefined, which a
       chart passes over; null is a gap. */
    function joined(lines, duration) {
        var all = [0, duration];
        lines.forEach(function (it) {
            for (var i = 0; i < it.at.length; i++) {
                all.push(it.at[i]);
            }
        });
        var sorted = Float64Array.from(all).sort();
        var at = [];
        for (var i = 0; i < sorted.length; i++) {
            if (!i || sorted[i] !== sorted[i - 1]) {
                at.push(sorted[i]);
            }
        }
        var columns = lines.map(function (it) {
            var column = new Array(at.length);
            var next = 0;
            var held = undefined;
            for (var i = 0; i < at.length; i++) {
                /* A gap lasts until the next value, whatever other lines have in between. */
                column[i] = held;
                while (next < it.at.length && it.at[next] === at[i]) {
                    column[i] = it.value[next++];
                    held = column[i] === null ? null : undefined;
                }
            }
            return column;
        });
        return [at].concat(columns);
    }

    /* True hours left: the time to the next step in which the loads are not met. */
    function trueHours(spans, duration) {
        var at = [];
        var value = [];
        var from = 0;
        for (var i = 0; i < spans.length; i += 2) {
            at.push(from, spans[i], spans[i + 1]);
            value.push((spans[i] - from) / 3.6e6, 0, 0);
            from = spans[i + 1];
        }
        if (spans.length && from < duration) {
            at.push(from);
            value.push(null);
        }
        return { at: at, value: value };
    }

    function run() {
        var raw = JSON.parse(document.getElementById('run').textContent);
        var units = {
            state: 1e-4,
            lower: 1e-4,
            upper: 1e-4,
            current: 1e-6,
            voltage: 1e-6,
            temperature: 1e-3,
            hours: 1 / 60
        };
        function lines(packed) {
            var all = {};
            Object.keys(packed).forEach(function (name) {
                var it = packed[name];
                all[name] = line(
                    it.points, it.step * units[name], raw.tickMillis, raw.durationMillis);
            });
            return all;
        }
        raw.truth = lines(raw.truth);
        raw.truth.hours = trueHours(raw.starved, raw.durationMillis);
        raw.readings = raw.readings.map(lines);
        raw.rules = raw.rules.map(function (text) {
            return text ? line(text, 1, raw.tickMillis, raw.durationMillis) : null;
        });
        return raw;
    }

    function two(number) {
        return (number < 10 ? '0' : '') + number;
    }

    /* "2 d 03:12:40", as everywhere in reports. */
    function moment(millis) {
        var seconds = Math.floor(millis / 1000);
        var rest = Math.round(millis - seconds * 1000);
        return (
            Math.floor(seconds / 86400) + ' d ' + two(Math.floor(seconds / 3600) % 24) + ':' +
            two(Math.floor(seconds / 60) % 60) + ':' + two(seconds % 60) +
            (rest ? '.' + ('00' + rest).slice(-3) : ''));
    }

    function figure(value, digits) {
        var text = value.toFixed(digits);
        return (Number(text) === 0 ? (0).toFixed(digits) : text).replace('-', '\u2212');
    }

    return {
        run: run,
        joined: joined,
        nearest: nearest,
        valueAt: valueAt,
        moment: moment,
        figure: figure
    };
})();
