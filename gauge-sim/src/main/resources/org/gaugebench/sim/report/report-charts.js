'use strict';
/* How strips are drawn: pens, scales and what is painted by hand. Colours come from the look's
   tokens each time, so a change of theme is a matter of drawing again. */
var GaugebenchCharts = (function () {
    var DASHES = [[], [7, 4], [2, 3.2], [13, 3.5, 2, 3.5], [22, 6], [6, 3, 2, 3, 2, 3]];
    var CAUSES = ['offset', 'past-shunt', 'losses', 'start', 'capacity', 'else'];

    function token(name) {
        return getComputedStyle(document.documentElement).getPropertyValue('--' + name).trim();
    }

    function size(name) {
        return parseFloat(token(name)) || 1;
    }

    function truthPen(isTall) {
        return { token: 'truth', width: isTall ? 'pen-truth' : 'pen-truth-slim', dash: [] };
    }

    function gaugePen(index) {
        return { token: 'gauge-' + (index + 1), width: 'pen-reading', dash: DASHES[index] };
    }

    /* Over a reading whose noise fills the bed: thin enough to leave the reading seen beside it. */
    function coreOfTruth() {
        return { token: 'truth', width: 'pen-hair', dash: [] };
    }

    function edgePen() {
        return { token: 'band-edge', width: 'pen-hair', dash: [] };
    }

    function series(pen, scale) {
        return {
            stroke: function () { return token(pen.token); },
            width: size(pen.width) * scale,
            dash: pen.dash.map(function (it) { return it * scale; }),
            points: { show: false },
            spanGaps: false
        };
    }

    function upright(u, millis, draw) {
        var x = u.valToPos(millis, 'x', true);
        if (x >= u.bbox.left - 1 && x <= u.bbox.left + u.bbox.width + 1) {
            draw(Math.round(x) + 0.5);
        }
    }

    /* Marks nearer to their neighbour than a number is wide share one place. */
    function together(marks, least) {
        var places = [];
        marks.sort(function (a, b) { return a.from - b.from || a.number - b.number; });
        marks.forEach(function (mark) {
            var last = places[places.length - 1];
            if (last && mark.from - last.to < least) {
                last.to = mark.to;
                last.numbers.push(mark.number);
            } else {
                places.push({ from: mark.from, to: mark.to, numbers: [mark.number] });
            }
        });
        return places;
    }

    /* "4", "4, 5", "4\u20136", "1, 4\u20136". */
    function numbers(list) {
        var words = [];
        var sorted = list.slice().sort(function (a, b) { return a - b; });
        for (var i = 0; i < sorted.length; i++) {
            var first = i;
            while (i + 1 < sorted.length && sorted[i + 1] === sorted[i] + 1) {
                i++;
            }
            words.push(i - first > 1 ? sorted[first] + '\u2013' + sorted[i]
                : sorted.slice(first, i + 1).join(', '));
        }
        return words.join(', ');
    }

    /* Dotted lines at events, whole ones at failures. */
    function moments(run, scale, withNumbers) {
        return function (u) {
            var context = u.ctx;
            var ratio = uPlot.pxRatio * scale;
            var top = u.bbox.top;
            var bottom = top + u.bbox.height;
            context.save();
            context.strokeStyle = token('event');
            context.fillStyle = token('ink');
            context.font = 12 * ratio + 'px ' + token('face');
            context.textAlign = 'center';
            context.lineWidth = ratio;
            var marks = [];
            run.events.forEach(function (event) {
                var shownX = -1e9;
                event.slice(1).forEach(function (millis, index) {
                    upright(u, millis, function (x) {
                        if (x - shownX < 3 * ratio) {
                            return;
                        }
                        shownX = x;
                        context.setLineDash([ratio, 4 * ratio]);
                        context.beginPath();
                        context.moveTo(x, top);
                        context.lineTo(x, bottom);
                        context.stroke();
                        if (index === 0) {
                            marks.push({ number: event[0], from: x, to: x });
                        }
                    });
                });
            });
            context.setLineDash([]);
            (withNumbers ? together(marks, 18 * ratio) : []).forEach(function (mark) {
                var words = numbers(mark.numbers);
                var half = context.measureText(words).width / 2 + 2 * ratio;
                var right = u.bbox.left + u.bbox.width;
                var middle = Math.max(
                    u.bbox.left + half, Math.min((mark.from + mark.to) / 2, right - half));
                context.fillStyle = token('paper');
                context.fillRect(middle - half, bottom - 15 * ratio, 2 * half, 14 * ratio);
                context.fillStyle = token('ink');
                context.fillText(words, middle, bottom - 4 * ratio);
            });
            context.strokeStyle = token('failed');
            context.setLineDash([]);
            context.lineWidth = 1.5 * ratio;
            run.failures.forEach(function (millis) {
                upright(u, millis, function (x) {
                    context.beginPath();
                    context.moveTo(x, top);
                    context.lineTo(x, bottom);
                    context.stroke();
                    if (withNumbers) {
                        context.fillStyle = token('failed');
                        context.textAlign = x > u.bbox.left + u.bbox.width / 2 ? 'right' : 'left';
                        var aside = context.textAlign === 'right' ? -4 : 4;
                        context.fillText('fails', x + aside * ratio, top + 13 * ratio);
                    }
                });
            });
            context.restore();
        };
    }

    function hatch(context, ratio, colour) {
        var tile = document.createElement('canvas');
        tile.width = tile.height = Math.round(6 * ratio);
        var pen = tile.getContext('2d');
        pen.strokeStyle = colour;
        pen.lineWidth = 1.6 * ratio;
        for (var i = -1; i < 2; i++) {
            pen.beginPath();
            pen.moveTo(i * tile.width, tile.height);
            pen.lineTo((i + 1) * tile.width, 0);
            pen.stroke();
        }
        return context.createPattern(tile, 'repeat');
    }

    /* Steps of a lane: not armed has none, waiting a third, paused two thirds, holding all. */
    function lanes(run, visible, scale) {
        var heights = [0, 1 / 3, 1, 2 / 3];
        var tokens = ['', 'rule-waiting', 'rule-holding', 'rule-paused'];
        return function (u) {
            var context = u.ctx;
            var ratio = uPlot.pxRatio * scale;
            var shown = visible();
            var each = u.bbox.height / Math.max(1, shown.length);
            var right = u.bbox.left + u.bbox.width;
            context.save();
            context.beginPath();
            context.rect(u.bbox.left, u.bbox.top, u.bbox.width, u.bbox.height);
            context.clip();
            shown.forEach(function (gauge, place) {
                var rule = run.rules[gauge];
                var base = u.bbox.top + (place + 1) * each - 2 * ratio;
                var full = each - (shown.length > 1 ? 20 : 8) * ratio;
                var pattern = hatch(context, ratio, token('rule-paused'));
                for (var i = 0; i < rule.at.length; i++) {
                    if (rule.value[i] === null) {
                        continue;
                    }
                    var end = i + 1 < rule.at.length ? rule.at[i + 1] : run.durationMillis;
                    var from = Math.max(u.bbox.left, u.valToPos(rule.at[i], 'x', true));
                    var to = Math.min(right, u.valToPos(end, 'x', true));
                    if (to < u.bbox.left || from > right) {
                        continue;
                    }
                    var width = Math.max(to - from, ratio);
                    var state = Math.floor(rule.value[i] / run.ruleReasonCount);
                    var height = full * heights[state];
                    if (height) {
                        context.fillStyle = state === 3 ? pattern : token(tokens[state]);
                        context.fillRect(from, base - height, width, height);
                    }
                    context.fillStyle = token('ink');
                    context.fillRect(from, base, width, ratio);
                }
                if (shown.length > 1) {
                    context.font = 12 * ratio + 'px ' + token('face');
                    context.fillStyle = token('ink');
                    context.textAlign = 'left';
                    context.fillText(
                        run.gauges[gauge], u.bbox.left + 4 * ratio,
                        u.bbox.top + place * each + 13 * ratio);
                }
            });
            context.restore();
        };
    }

    /* Parts above zero are stacked up, those below down; each second one is hatched. */
    function areas(run, scale) {
        return function (u) {
            var context = u.ctx;
            var ratio = uPlot.pxRatio * scale;
            var split = run.attribution;
            context.save();
            context.beginPath();
            context.rect(u.bbox.left, u.bbox.top, u.bbox.width, u.bbox.height);
            context.clip();
            pieces(split.moments).forEach(function (piece) {
                var up = piece.map(function () { return 0; });
                var down = up.slice();
                CAUSES.forEach(function (cause, index) {
                    var colour = token('cause-' + cause);
                    [up, down].forEach(function (edge, side) {
                        var next = edge.map(function (base, i) {
                            var part = piece[i][index + 1] / 1e6;
                            return base + (side ? Math.min(0, part) : Math.max(0, part));
                        });
                        if (next.every(function (it, i) { return it === edge[i]; })) {
                            return;
                        }
                        context.beginPath();
                        trace(u, piece, next, false);
                        trace(u, piece, edge, true);
                        context.closePath();
                        context.fillStyle = index % 2 ? hatch(context, ratio, colour) : colour;
                        context.fill();
                        context.beginPath();
                        trace(u, piece, next, false);
                        context.strokeStyle = index % 2 ? colour : token('paper');
                        context.lineWidth = ratio;
                        context.stroke();
                        for (var i = 0; i < edge.length; i++) {
                            edge[i] = next[i];
                        }
                    });
                });
            });
            context.restore();
        };
    }

    function trace(u, piece, values, isBack) {
        for (var n = 0; n < piece.length; n++) {
            var i = isBack ? piece.length - 1 - n : n;
            var x = u.valToPos(piece[i][0], 'x', true);
            var y = u.valToPos(values[i], 'y', true);
            if (n || isBack) {
                u.ctx.lineTo(x, y);
            } else {
                u.ctx.moveTo(x, y);
            }
        }
    }

    function pieces(moments) {
        var all = [[]];
        moments.forEach(function (moment) {
            if (moment.length > 1) {
                all[all.length - 1].push(moment);
            } else if (all[all.length - 1].length) {
                all.push([]);
            }
        });
        return all.filter(function (piece) { return piece.length > 1; });
    }

    return {
        CAUSES: CAUSES,
        token: token,
        size: size,
        truthPen: truthPen,
        coreOfTruth: coreOfTruth,
        gaugePen: gaugePen,
        edgePen: edgePen,
        series: series,
        moments: moments,
        numbers: numbers,
        together: together,
        lanes: lanes,
        areas: areas
    };
})();
