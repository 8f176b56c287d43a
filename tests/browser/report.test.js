// The report in a browser: alone, by keyboard, on a phone, on paper, with hostile names.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { clippedText, graveFaults, overflow, pagesOnPaper } from './faults.js';
import { hostileNames, jobNamed } from './hostile.js';
import { dewgap, exampleText, launch, money, open, reportOf, steady } from './pages.js';

const widths = [360, 768, 1280];
const examples = {
  'fit after something': ['old-sash.toml', '--money', money],
  hold: ['hold-way-out.toml'],
  leave: ['damp-shower-room.toml'],
  fit: ['steel-casement.toml'],
  'more than one thing, of a house': ['house/quince-row.toml'],
};

let browser;
const paths = {};
before(async () => {
  browser = await launch();
  for (const [name, [file, ...options]] of Object.entries(examples))
    paths[name] = reportOf(exampleText(file), ...options);
});
after(() => browser.close());

for (const name of Object.keys(examples)) {
  describe(`a report that says ${name}`, () => {
    test('asks for nothing but itself', async () => {
      const { page, requests, surprises, close } = await open(browser, paths[name]);
      assert.deepEqual(requests, [`file://${paths[name]}`]);
      assert.deepEqual(surprises, []);
      assert.equal(await page.getAttribute('html', 'lang'), 'en');
      await close();
    });

    test('has no serious fault for those who need help to read it', async () => {
      const { page, close } = await open(browser, paths[name]);
      assert.deepEqual(await graveFaults(page), []);
      assert.ok((await page.$$('h1')).length === 1, 'one first heading');
      await close();
    });

    test('is reached by keyboard, all of it', async () => {
      const { page, close } = await open(browser, paths[name]);
      const wanted = await page.$$eval('a[href], summary, [tabindex="0"]', (all) =>
        all.filter((one) => one.checkVisibility({ contentVisibilityAuto: true })).length);
      const met = [];
      for (let step = 0; step < wanted + 5; ++step) {
        await page.keyboard.press('Tab');
        const place = await page.evaluate(() => [...document.querySelectorAll('*')].indexOf(document.activeElement));
        const tag = await page.evaluate(() => document.activeElement.tagName);
        if (tag === 'BODY' || met.includes(place)) break;
        met.push(place);
      }
      assert.equal(met.length, wanted);
      assert.deepEqual(met, [...met].sort((a, b) => a - b), 'in the order of the page');
      await close();
    });

    for (const width of widths)
      test(`fits ${width} px`, async () => {
        const { page, close } = await open(browser, paths[name], width);
        assert.ok((await overflow(page)) <= 0, 'no sideways scrolling');
        assert.deepEqual(await clippedText(page), []);
        await close();
      });

    test('has two pages for the householder on paper', async () => {
      const { page, close } = await open(browser, paths[name]);
      // Of a house there is a page before those of its windows.
      const windows = (await page.$$('article.householder')).length;
      const before = (await page.$$('article.house')).length;
      assert.equal(await householderPages(page), before + 2 * windows);
      await close();
    });
  });
}

/** Pages of the PDF when nothing but the householder's part is printed. */
async function householderPages(page) {
  await page.addStyleTag({
    content: '.appendices { display: none } article:nth-last-of-type(1 of .householder) .leaf:last-of-type ' +
      '{ break-after: auto !important }',
  });
  return pagesOnPaper(page);
}

test('the skip link leads to the answer', async () => {
  const { page, close } = await open(browser, paths.fit);
  await page.keyboard.press('Tab');
  assert.equal(await page.evaluate(() => document.activeElement.className), 'skip');
  await page.keyboard.press('Enter');
  assert.match(page.url(), /#content$/);
  await close();
});

test('every figure is the one of the document, to its last digit', async () => {
  const { page, close } = await open(browser, paths['fit after something']);
  const job = paths['fit after something'].replace(/html$/, 'toml');
  const document = JSON.parse(dewgap('report', job, '--money', money, '--samples', '32', '--window-hours', '1500000', '--json'));
  const shown = await page.$$eval('[data-figure]', (all) =>
    all.map((one) => [one.dataset.figure, one.dataset.form, one.textContent]));
  assert.ok(shown.length >= 60, `${shown.length} figures`);
  for (const [pointer, form, text] of shown) checkFigure(at(document, pointer), form, text, pointer);
  await close();
});

function at(document, pointer) {
  return pointer.split('/').slice(1).reduce((part, key) => part[key], document);
}

/** Each number of the text lies within half of its last digit of the document's. */
function checkFigure(value, form, text, pointer) {
  const low = value.p10 ?? value.least;
  const high = value.p90 ?? value.greatest;
  const wanted = typeof value === 'number' ? [value] : form.startsWith('range') ? [low, high] : [value.p50, low, high];
  if (form === 'share') return checkShare(value, text, pointer);
  const numbers = text.match(/[-+]?\d+(\.\d+)?/g);
  assert.equal(numbers.length, wanted.length, `${pointer}: ${text}`);
  numbers.forEach((number, i) => {
    const half = 0.5 * 10 ** -(number.split('.')[1] ?? '').length;
    assert.ok(Math.abs(Number(number) - wanted[i]) <= half * (1 + 1e-9), `${pointer}: ${text}, not ${wanted[i]}`);
  });
}

function checkShare(value, text, pointer) {
  if (text.startsWith('over')) return assert.ok(value > 0.99 && value < 1, pointer);
  if (text.startsWith('under')) return assert.ok(value > 0 && value < 0.01, pointer);
  assert.ok(Math.abs(Number(text.match(/\d+/)[0]) - 100 * value) <= 0.5 + 1e-9, `${pointer}: ${text}`);
}

describe('a hostile name', () => {
  for (const [kind, name] of Object.entries(hostileNames))
    test(`of ${kind} stays a name`, async () => {
      const path = reportOf(jobNamed(name), ...steady);
      for (const width of widths) {
        const { page, requests, surprises, close } = await open(browser, path, width);
        assert.deepEqual(requests, [`file://${path}`]);
        assert.deepEqual(surprises, []);
        assert.match(await page.title(), /^A second pane inside: /);
        assert.equal(await page.$$eval('script', (all) => all.length), 1, 'the run record alone');
        assert.equal(await page.$$eval('img, iframe, object, embed', (all) => all.length), 0);
        const record = JSON.parse(await page.textContent('#run-record'));
        assert.ok(record.survey.length > 10);
        assert.ok((await overflow(page)) <= 0, `no sideways scrolling at ${width} px`);
        if (width === 1280) assert.equal(await householderPages(page), 2);
        await close();
      }
    });

  test('on HOLD stays a name', async () => {
    const path = reportOf(jobNamed(hostileNames.markup, 'hold-way-out.toml'), ...steady);
    const { page, surprises, close } = await open(browser, path, 360);
    assert.deepEqual(surprises, []);
    assert.equal(await page.$$eval('script', (all) => all.length), 1);
    await close();
  });
});
