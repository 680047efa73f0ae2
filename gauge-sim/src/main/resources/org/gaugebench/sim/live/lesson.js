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
    /* The lesson that is about to run and of which the bench has not told yet. */
    let coming = 0;
    /* Plain names of the gauges of the run, whether or not this window has the lesson open. */
    let names = {};
    let namesOf = 0;

    async function list() {
        const titles = (await (await fetch('/lessons')).json()).titles;
        const choose = tools.by('lesson-choose');
        choose.append(new Option(tools.w('lesson-choose'), ''));
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
        show();
        if (!match) { return; }
        const reply = await fetch('/lesson/' + match[1]);
        if (!reply.ok) { tools.say(await reply.text()); return; }
        const next = await reply.json();
        coming = next.number;
        // A second window joins the lesson that runs; it does not begin it anew for everybody.
        const running = (await (await fetch('/setup')).json()).lesson;
        if (running === next.number) {
            coming = 0;
        } else if (!(await tools.act({act: 'lesson', number: match[1]}))) {
            coming = 0;
            return;
        }
        lesson = next;
        stepAt = 0;
        kept = '';
        answer = null;
        show();
        showStep();
    }
    /* The bench says which lesson it runs: another window may have chosen another one. */
    async function knows(number) {
        if (number !== namesOf) {
            names = number === 0 ? {} : (await (await fetch('/lesson/' + number)).json()).gauges;
            namesOf = number;
        }
        if (number === coming) { coming = 0; }
        if (lesson && coming === 0 && number !== lesson.number) {
            lesson = null;
            history.replaceState(null, '', location.pathname);
            show();
        }
    }
    const steps = () => lesson.steps.length + 1;
    const step = () => lesson.steps[stepAt];
    const isAnswer = () => stepAt === lesson.steps.length;

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
    /* What the button does, in words. */
    function doing() {
        const w = tools.w;
        if (isAnswer()) { return w('lesson-try-it'); }
        switch (step().action) {
        case 'run-to': return w('lesson-run-to', step().at);
        case 'reveal': return w('reveal');
        case 'look': return w('lesson-look');
        default: return w('lesson-do');
        }
    }
    function showStep() {
        const w = tools.w;
        tools.set('lesson-title', w('lesson', lesson.number, lesson.title));
        const asking = !isAnswer() && step().action === 'predict';
        tools.set('lesson-question', asking ? lesson.question : '');
        tools.by('lesson-question').hidden = !asking;
        tools.by('lesson-choices').replaceChildren(...(asking ? lesson.choices.map(choice) : []));
        able('lesson-back', stepAt > 0, 'lesson-next');
        able('lesson-next', !isAnswer(), 'lesson-back');
        tools.by('lesson-do').hidden = asking;
        tools.set('lesson-do', asking ? '' : doing());
        tools.by('lesson-sheet').href = '/sheets/' + lesson.name + '-pupil.html';
        if (isAnswer()) { showAnswer(); return; }
        tools.by('lesson-answer').replaceChildren();
        tools.set('lesson-step', (stepAt + 1) + '/' + steps() + ' ' + (asking ? lesson.ask : step().text));
    }
    /* A button that goes dead under the hand hands the focus on. */
    function able(id, isAble, other) {
        const button = tools.by(id);
        const hadFocus = document.activeElement === button;
        button.disabled = !isAble;
        if (hadFocus && !isAble) {
            tools.by(other).disabled = false;
            tools.by(other).focus();
        }
    }
    /* Which choice the run gave, and what stands behind the one that was taken. */
    function verdict() {
        const w = tools.w;
        const right = answer.choices.find(each => each.right);
        const own = answer.choices.find(each => each.letter === kept);
        if (!right) { return own ? own.thinks : ''; }
        const letter = right.letter.toUpperCase();
        return own && !own.right
            ? w('lesson-wrong', own.letter.toUpperCase(), letter) + ' ' + own.thinks
            : w('lesson-right', letter) + ' ' + right.thinks;
    }
    async function showAnswer() {
        const shown = lesson;
        tools.set('lesson-step', steps() + '/' + steps() + ' ' + tools.w('lesson-answer'));
        if (answer === null) {
            const reply = await fetch('/lesson/' + shown.number + '/answer');
            if (!reply.ok || lesson !== shown) { return; }
            answer = await reply.json();
            if (!isAnswer()) { return; }
        }
        const lines = [verdict(), answer.answer, tools.w('lesson-try') + ' ' + shown.next.text];
        tools.by('lesson-answer').replaceChildren(...lines.map(text => {
            const line = document.createElement('p');
            line.textContent = text;
            return line;
        }));
    }
    async function doStep() {
        if (isAnswer()) {
            // What to try is tried from the start: class and truth begin anew.
            if (await tools.act({act: 'reset'})) { change(lesson.next); }
            return;
        }
        const now = step();
        if (now.action === 'run-to') { tools.act({act: 'run-to', at: now.at}); }
        if (now.action === 'reveal') { tools.act({act: 'reveal', value: true}); }
        if (now.action === 'change') { change(now); }
        if (now.action === 'look') { tools.by(now.target).scrollIntoView({block: 'start'}); }
    }
    /* For the next class: the first step, and no prediction of the last one. */
    function restart() {
        if (!lesson) { return; }
        stepAt = 0;
        kept = '';
        answer = null;
        showStep();
    }
    const change = it => tools.act({act: 'set', [it.target]: it.value});
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
        nameOf: gauge => names[gauge],
        knows,
        restart,
        wire,
        open,
        get lesson() { return lesson; },
        get step() { return stepAt; },
        get kept() { return kept; },
        get answer() { return answer; }
    };
})();
