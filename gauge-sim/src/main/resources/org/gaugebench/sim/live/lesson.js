'use strict';
/*
 * A lesson beside the run: question, prediction, steps, and the answer that the run gives. What a
 * pupil predicts stays in this window, and is forgotten with it.
 */
window.benchLesson = (() => {
    let tools = null;
    let lesson = null;
    let stepAt = 0;
    let kept = '';
    let answer = null;

    async function list() {
        const titles = (await (await fetch('/lessons')).json()).titles;
        const choose = tools.by('lesson-choose');
        choose.append(new Option(tools.words('lesson-choose'), ''));
        titles.forEach((title, i) => choose.append(new Option((i + 1) + ' ' + title, i + 1)));
        choose.hidden = titles.length === 0;
        show();
    }
    function show() {
        tools.by('lesson-choose').value = lesson ? String(lesson.number) : '';
        tools.by('lesson-panel').hidden = lesson === null;
    }
    async function open() {
        const match = /^#lesson=(\d+)$/.exec(location.hash);
        lesson = null;
        if (!match) { show(); return; }
        const reply = await fetch('/lesson/' + match[1]);
        if (!reply.ok) { tools.say(await reply.text()); show(); return; }
        // Known before the run begins anew: its gauges then bear the lesson's names.
        lesson = await reply.json();
        stepAt = 0;
        kept = '';
        answer = null;
        if (!(await tools.act({act: 'lesson', number: match[1]}))) { lesson = null; show(); return; }
        show();
        showStep();
    }
    const steps = () => lesson.steps.length + 1;
    const step = () => lesson.steps[stepAt];

    /* Choices stand beside the prediction and the answer: a whole step is to fit on a projector. */
    function choice(each) {
        const item = document.createElement('li');
        const label = document.createElement('label');
        const box = document.createElement('input');
        box.type = 'radio';
        box.name = 'prediction';
        box.value = each.letter;
        box.checked = each.letter === kept;
        box.disabled = answer !== null;
        box.addEventListener('change', () => { kept = box.value; });
        label.append(box, ' ' + each.letter.toUpperCase() + ' ' + each.text);
        item.append(label);
        return item;
    }
    function showStep() {
        const w = tools.words;
        tools.set('lesson-title', w('lesson') + ' ' + lesson.number + ': ' + lesson.title);
        const asking = stepAt < lesson.steps.length && step().action === 'predict';
        tools.set('lesson-question', asking ? lesson.question : '');
        tools.by('lesson-question').hidden = !asking;
        tools.by('lesson-choices').replaceChildren(...(asking ? lesson.choices.map(choice) : []));
        tools.by('lesson-back').disabled = stepAt === 0;
        tools.by('lesson-next').disabled = stepAt === steps() - 1;
        tools.by('lesson-sheet').href = '/sheets/' + lesson.name + '-pupil.html';
        if (stepAt === lesson.steps.length) { showAnswer(); return; }
        tools.by('lesson-answer').replaceChildren();
        const text = asking ? lesson.ask : step().text;
        tools.set('lesson-step', (stepAt + 1) + '/' + steps() + ' ' + text);
        tools.by('lesson-do').hidden = asking;
    }
    async function showAnswer() {
        const w = tools.words;
        const shown = lesson;
        tools.by('lesson-do').hidden = true;
        tools.set('lesson-step', steps() + '/' + steps() + ' ' + w('lesson-answer'));
        if (answer === null) {
            const reply = await fetch('/lesson/' + shown.number + '/answer');
            if (!reply.ok || lesson !== shown) { return; }
            answer = await reply.json();
        }
        const lines = [answer.answer];
        const own = answer.choices.find(each => each.letter === kept);
        if (own) {
            lines.unshift(w(own.right ? 'lesson-right' : 'lesson-wrong', own.letter.toUpperCase())
                + ' ' + own.thinks);
        }
        lines.push(w('lesson-try') + ' ' + shown.next.text);
        tools.by('lesson-answer').replaceChildren(...lines.map(text => {
            const line = document.createElement('p');
            line.textContent = text;
            return line;
        }));
    }
    function doStep() {
        const now = step();
        if (now.action === 'run-to') { tools.act({act: 'run-to', at: now.at}); }
        if (now.action === 'reveal') { tools.act({act: 'reveal', value: true}); }
        if (now.action === 'change') { tools.act({act: 'set', [now.target]: now.value}); }
        if (now.action === 'look') { tools.by(now.target).scrollIntoView({block: 'start'}); }
    }
    function close() {
        location.hash = '';
        tools.act({act: 'lesson', number: 0});
    }
    function wire(given) {
        tools = given;
        tools.by('lesson-do').addEventListener('click', doStep);
        tools.by('lesson-back').addEventListener('click', () => { stepAt--; showStep(); });
        tools.by('lesson-next').addEventListener('click', () => { stepAt++; showStep(); });
        tools.by('lesson-close').addEventListener('click', close);
        tools.by('lesson-choose').addEventListener('change', event => {
            if (event.target.value) { location.hash = '#lesson=' + event.target.value; } else { close(); }
        });
        addEventListener('hashchange', open);
        list();
    }
    return {
        /* What the lesson calls a gauge; nothing where it calls it nothing. */
        nameOf: gauge => lesson && lesson.gauges ? lesson.gauges[gauge] : undefined,
        wire,
        open,
        get lesson() { return lesson; },
        get step() { return stepAt; },
        get kept() { return kept; },
        get answer() { return answer; }
    };
})();
