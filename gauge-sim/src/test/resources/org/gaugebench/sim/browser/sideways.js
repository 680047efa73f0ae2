// Answers 'none', or how wide the page is and which elements reach farthest out of the window.
const page = document.scrollingElement;
if (page.scrollWidth <= window.innerWidth) {
    return 'none';
}
const out = [...document.body.querySelectorAll('*')]
    .map(element => ({element, right: element.getBoundingClientRect().right}))
    .filter(each => each.right > window.innerWidth + 0.5)
    .sort((a, b) => b.right - a.right)
    .slice(0, 5)
    .map(each => each.element.tagName.toLowerCase() + (each.element.id ? '#' + each.element.id : '')
        + (each.element.className ? '.' + String(each.element.className) : '')
        + ' to ' + Math.round(each.right));
return page.scrollWidth + ' in ' + window.innerWidth + ': ' + out.join(', ');
