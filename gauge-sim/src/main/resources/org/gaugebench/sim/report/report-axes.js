'use strict';
/* The axes of strips: how far values reach, what stands beside them and the room that it takes. */
var GaugebenchAxes = (function () {
    var draw = GaugebenchCharts;
    var TIMES = [
        1, 2, 5, 10, 20, 50, 100, 200, 500, 1e3, 2e3, 5e3, 10e3, 15e3, 30e3, 60e3, 120e3, 300e3,
        600e3, 900e3, 1800e3, 3600e3, 7200e3, 10800e3, 21600e3, 43200e3, 864e5, 1728e5, 432e6,
        864e6, 1728e6, 432e7, 864e7, 1728e7, 864e8, 864e9
    ];

    /* Words under the axis: days for a week, hours for a day, and so on down. */
    function timeWords(millis, step) {
        var day = Math.floor(millis / 864e5);
        var rest = millis - day * 864e5;
        if (step >= 864e5) {
            return day + ' d';
        }
        var hours = Math.floor(rest / 3.6e6);
        var minutes = Math.floor(rest / 6e4) % 60;
        var clock = (hours < 10 ? '0' : '') + hours + ':' + (minutes < 10 ? '0' : '') + minutes;
        if (step >= 6e4) {
            return rest === 0 && day > 0 ? day + ' d' : clock;
        }
        var seconds = (rest % 6e4) / 1000;
        var text = seconds.toFixed(step >= 1000 ? 0 : 3);
        return clock + ':' + (seconds < 10 ? '0' : '') + text;
    }

    function fontOf(scale) {
        return scale * draw.size('text-small') + 'px ' + draw.token('face');
    }

    /* How wide words stand, in the pixels that uPlot counts in. */
    function widest(u, font, words) {
        u.ctx.save();
        u.ctx.font = font;
        var all = words.map(function (it) { return u.ctx.measureText(it).width; });
        u.ctx.restore();
        return Math.max.apply(null, [0].concat(all));
    }

    /* The finest step of time whose labels leave a gap between them. */
    function timeStep(u, font, from, to, room, gap) {
        return TIMES.filter(function (step) {
            var words = [timeWords(from, step), timeWords(to, step)];
            return room * step / (to - from) >= widest(u, font, words) + gap;
        })[0] || TIMES[TIMES.length - 1];
    }

    /* The value axis asks `shared` how wide it may be: strips of a page stand on one left edge. */
    function axes(scale, shared) {
        var font = fontOf(scale);
        var rule = function () { return draw.token('rule'); };
        var common = {
            stroke: function () { return draw.token('soft'); },
            font: font,
            grid: { stroke: rule, width: scale },
            ticks: { stroke: rule, width: scale, size: 4 * scale }
        };
        return [
            Object.assign({}, common, {
                incrs: TIMES,
                space: function (u, axis, from, to, room) {
                    var step = timeStep(u, font, from, to, room, 14 * scale);
                    return Math.max(64 * scale, room * step / (to - from) * 0.999);
                },
                size: 28 * scale,
                gap: 4 * scale,
                values: function (u, splits, axis, space, step) {
                    return splits.map(function (at) { return timeWords(at, step); });
                }
            }),
            Object.assign({}, common, {
                space: 28 * scale,
                size: function (u, values) {
                    var words = (values || []).filter(function (it) { return it; });
                    var need = widest(u, font, words) + 10 * scale;
                    return shared(Math.max(58 * scale, Math.ceil(need)));
                },
                gap: 4 * scale,
                values: function (u, splits, axis, space, step) {
                    var digits = 0;
                    while (digits < 6 && Math.abs(step * Math.pow(10, digits)
                            - Math.round(step * Math.pow(10, digits))) > 1e-6) {
                        digits++;
                    }
                    return splits.map(function (it) {
                        return GaugebenchData.figure(it, digits);
                    });
                }
            })
        ];
    }

    /* Beyond the right edge: half of the label that may stand under it. Found from the width that
       all strips have, so that they end at one place too. */
    function beyond(scale) {
        var font = fontOf(scale);
        return function (u) {
            var from = u.scales.x.min;
            var to = u.scales.x.max;
            if (!(to > from)) {
                return 22 * scale;
            }
            var room = u.width - (u.axes[1]._size || 58 * scale) - 22 * scale;
            var step = timeStep(u, font, from, to, room, 14 * scale);
            var label = widest(u, font, [timeWords(to, step)]);
            return Math.max(22 * scale, Math.ceil(label / 2) + 2 * scale);
        };
    }

    /* The largest figure of some columns in what is seen, or the one they came with; -1 if none. */
    function largest(u, columns) {
        var first = u.series[0].idxs[0];
        var most = -1;
        columns.forEach(function (column) {
            var isFound = false;
            for (var i = u.series[0].idxs[1]; i >= 0 && (i >= first || !isFound); i--) {
                var value = u.data[column][i];
                isFound = isFound || value !== undefined;
                most = Math.max(most, typeof value === 'number' ? value : -1);
            }
        });
        return most;
    }

    /* Where `columns` of gauges are given, twice their largest figure is the most of the scale:
       a truth far above them would press them flat. */
    function range(strip, columns) {
        return function (u, low, high) {
            if (low === null || high === null || low === undefined) {
                return strip.zero ? [0, 1] : [null, null];
            }
            var most = columns ? largest(u, columns) : -1;
            if (most >= 0) {
                high = Math.min(high, Math.max(2 * most, strip.least));
            }
            var bottom = strip.zero ? Math.min(low, 0) : low;
            var top = strip.zero ? Math.max(high, 0) : high;
            var least = strip.least;
            var room = Math.max((top - bottom) * 0.06, (least - (top - bottom)) / 2);
            bottom -= room;
            top += room;
            if (strip.floor !== undefined && low >= strip.floor) {
                bottom = Math.max(bottom, strip.floor);
            }
            if (strip.ceiling !== undefined && high <= strip.ceiling) {
                top = Math.min(top, strip.ceiling + (strip.ceiling - bottom) * 0.02);
            }
            return [bottom, top];
        };
    }

    /* Says so where a line goes on above the strip: in each part of it that has room for the words,
       or for the figure alone, and in the widest part anyhow. */
    function goesOn(line, scale) {
        return function (u) {
            var spans = above(u, line, u.scales.y.max);
            var ratio = uPlot.pxRatio * scale;
            var context = u.ctx;
            context.save();
            context.font = 12 * ratio + 'px ' + draw.token('face');
            context.textAlign = 'center';
            function room(words) {
                return context.measureText(words).width + 4 * ratio;
            }
            var widestSpan = spans.slice().sort(function (a, b) {
                return b.to - b.from - a.to + a.from;
            })[0];
            spans.forEach(function (span) {
                var figure = GaugebenchData.figure(span.most, 0) + '\u202fh';
                var words = '\u2191 true goes on to ' + figure;
                if (span.to - span.from < room(words)) {
                    words = '\u2191 ' + figure;
                }
                var half = room(words) / 2;
                if (span.to - span.from < 2 * half && span !== widestSpan) {
                    return;
                }
                var middle = Math.max(u.bbox.left + half, Math.min(
                    (span.from + span.to) / 2, u.bbox.left + u.bbox.width - half));
                context.fillStyle = draw.token('paper');
                context.fillRect(middle - half, u.bbox.top, 2 * half, 16 * ratio);
                context.fillStyle = draw.token('ink');
                context.fillText(words, middle, u.bbox.top + 12 * ratio);
            });
            context.restore();
        };
    }

    /* The parts of a line above a value, in pixels of the canvas, and how far up each goes. */
    function above(u, line, top) {
        var spans = [];
        for (var i = 0; i + 1 < line.at.length; i++) {
            var a = line.value[i];
            var b = line.value[i + 1];
            var lasts = line.at[i + 1] - line.at[i];
            if (a === null || b === null || Math.max(a, b) <= top || lasts === 0) {
                continue;
            }
            var slope = (b - a) / lasts;
            var crossing = slope ? line.at[i] + (top - a) / slope : 0;
            var from = Math.max(u.scales.x.min, a > top ? line.at[i] : crossing);
            var to = Math.min(u.scales.x.max, b > top ? line.at[i + 1] : crossing);
            if (from < to) {
                var ends = [from, to].map(function (at) { return a + slope * (at - line.at[i]); });
                spans.push({
                    from: u.valToPos(from, 'x', true),
                    to: u.valToPos(to, 'x', true),
                    most: Math.max(ends[0], ends[1])
                });
            }
        }
        return spans;
    }

    return { axes: axes, beyond: beyond, goesOn: goesOn, range: range };
})();
