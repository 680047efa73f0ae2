// Answers 'none', or how wide the page is and which elements reach farthest out of the window.
const page = document.scrollingElement;
if (page.scrollWidth <= window.innerWidth) {
    return 'none';
}
// What lies in a frame that scrolls by itself does not widen the page.
const isFramed = element => {
    for (let at = element.parentElement; at && at !== document.body; at = at.parentElement) {
        if (getComputedStyle(at).overflowX !== 'visible') {
            return true;
        }
    }
    return false;
};
const out = [...document.body.querySelectorAll('*')]
    .map(element => ({element, right: element.getBoundingClientRect().right}))
    .filter(each => each.right > window.innerWidth + 0.5 && !isFramed(each.element))
    .sort((a, b) => b.right - a.right)
    .slice(0, 5)
    .map(each => each.element.tagName.toLowerCase() + (each.element.id ? '#' + each.element.id : '')
        + (each.element.className ? '.' + String(each.element.className) : '')
        + ' to ' + Math.round(each.right));
return page.scrollWidth + ' in ' + window.innerWidth + ': ' + out.join(', ');
