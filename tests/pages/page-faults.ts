/**
 * Looks at a page as it stands and names what is clipped: boxes that run out of the page to the side, cells whose words
 * don't fit, words of a drawing outside its frame or over each other. Runs in the browser, so it can use nothing from here.
 */
export function clippedParts(): string[] {
  const faults: string[] = [];
  const width = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > width + 1) {
    faults.push(`the page is ${document.documentElement.scrollWidth} wide in ${width}`);
  }
  const words = (element: Element) => (element.textContent ?? '').trim().slice(0, 50);
  for (const element of document.querySelectorAll('h1,h2,h3,p,li,dt,dd,td,th,caption,svg')) {
    const box = element.getBoundingClientRect();
    const isHidden = box.width === 0 || box.height === 0;
    // A wide table scrolls in a box of its own on a narrow screen; on paper that box does not clip.
    const scroller = element.closest('.wide');
    const scrolls = scroller !== null && getComputedStyle(scroller).overflowX === 'auto';
    if (!isHidden && !scrolls && (box.right > width + 1 || box.left < -1)) {
      faults.push(`${element.tagName} runs out of the page: ${words(element)}`);
    }
  }
  for (const drawing of document.querySelectorAll('svg')) {
    const frame = drawing.getBoundingClientRect();
    if (frame.width === 0) continue;
    const boxes = [...drawing.querySelectorAll('text')].map((text) => ({
      words: words(text),
      box: text.getBoundingClientRect(),
    }));
    for (const { words: said, box } of boxes) {
      const isInside =
        box.left >= frame.left - 1 &&
        box.right <= frame.right + 1 &&
        box.top >= frame.top - 1 &&
        box.bottom <= frame.bottom + 1;
      if (!isInside) faults.push(`words outside their drawing: ${said}`);
    }
    boxes.forEach(({ words: a, box: one }, i) => {
      for (const { words: b, box: other } of boxes.slice(i + 1)) {
        // Line boxes are taller than letters: only a real overlap counts.
        const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
        const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
        if (across > 1 && down > 0.45 * Math.min(one.height, other.height)) {
          faults.push(`words over each other: ${a} / ${b}`);
        }
      }
    });
  }
  return faults;
}
