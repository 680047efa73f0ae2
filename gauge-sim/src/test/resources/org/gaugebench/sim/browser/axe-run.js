// Answers with one line for each place where a rule of axe is broken. Rules of its 'experimental'
// set stay off, as axe's makers advise.
const done = arguments[arguments.length - 1];
axe.run(document, {resultTypes: ['violations']})
    .then(found => done(found.violations.flatMap(violation =>
        violation.nodes.map(node => violation.id + ': ' + violation.help + ': '
            + node.target.join(' ') + ': ' + (node.failureSummary || '').replace(/\s+/g, ' ')))))
    .catch(error => done(String(error)));
