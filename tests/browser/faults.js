// What can be wrong with a page, as a browser sees it.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** How far a page is wider than its window, px. */
export async function overflow(page) {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Serious findings of the accessibility checker, everything unfolded. */
export async function graveFaults(page) {
  // The page's own policy lets no script in: the checker goes past it, as an extension would.
  await page.evaluate(readFileSync(axe, 'utf8') + '; undefined');
  await page.evaluate(() => document.querySelectorAll('details').forEach((part) => { part.open = true; }));
  const { violations } = await page.evaluate(() => window.axe.run());
  return violations
    .filter(({ impact }) => ['serious', 'critical'].includes(impact))
    .map(({ id, nodes }) => [id, nodes[0].html.slice(0, 200)]);
}

/** Text that stands outside its drawing. */
export async function clippedText(page) {
  return page.evaluate(() => [...document.querySelectorAll('svg text')]
    .filter((text) => {
      const box = text.getBoundingClientRect();
      const frame = text.ownerSVGElement.getBoundingClientRect();
      const slack = 1;
      return box.width > 0 && (box.left < frame.left - slack || box.right > frame.right + slack ||
        box.top < frame.top - slack || box.bottom > frame.bottom + slack);
    })
    .map((text) => text.textContent));
}

/** Pairs of texts of one drawing that lie on each other, by more than a hair's breadth. */
export async function textOnText(page) {
  return page.evaluate(() => [...document.querySelectorAll('svg')].flatMap((drawing) => {
    const texts = [...drawing.querySelectorAll('text')]
      .map((text) => ({ words: text.textContent, box: text.getBoundingClientRect() }))
      .filter(({ words, box }) => words.trim() && box.width > 0);
    const slack = 1.5;
    const meet = (a, b) =>
      Math.min(a.right, b.right) - Math.max(a.left, b.left) > slack &&
      Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > slack;
    return texts.flatMap((one, i) =>
      texts.slice(i + 1).filter((other) => meet(one.box, other.box)).map((other) => [one.words, other.words]));
  }));
}

/** Pages of its PDF, on the paper that the page itself asks for. */
export async function pagesOnPaper(page) {
  const pdf = await page.pdf({ preferCSSPageSize: true });
  return (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length;
}

/** Colours of a page as it would be printed, that are not black, white or grey. */
export async function colours(page) {
  return page.evaluate(() => {
    const found = new Set();
    for (const one of document.querySelectorAll('*')) {
      const style = getComputedStyle(one);
      for (const name of ['color', 'backgroundColor', 'fill', 'stroke', 'borderTopColor']) {
        const parts = style[name].match(/^rgba?\((\d+), (\d+), (\d+)/);
        if (parts && new Set(parts.slice(1, 4)).size > 1) found.add(style[name]);
      }
    }
    return [...found];
  });
}
