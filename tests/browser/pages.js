// Reports made by the program under test, and a browser to open them in.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const here = fileURLToPath(new URL('.', import.meta.url));
export const examples = process.env.DEWGAP_EXAMPLES ?? resolve(here, '../../examples');
const program = process.env.DEWGAP ?? resolve(here, '../../build/check/tools/dewgap');
const folder = mkdtempSync(join(tmpdir(), 'dewgap-browser-'));
let made = 0;

/** Few cases and hours: the page is under test here, not the figures. */
const quick = ['--samples', '32', '--window-hours', '1500000'];
/** No year at all: names and drawings are under test. */
export const steady = ['--samples', '16', '--window-hours', '0'];

export function dewgap(...options) {
  return execFileSync(program, options, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'], maxBuffer: 1e8 });
}

/** Path of the page that a verb makes of a job's text. */
export function pageOf(verb, jobText, ...options) {
  const start = join(folder, `${++made}`);
  writeFileSync(`${start}.toml`, jobText);
  const effort = options.includes('--samples') ? [] : quick;
  dewgap(verb, `${start}.toml`, ...effort, '--output', `${start}.html`, ...options);
  return `${start}.html`;
}

export function reportOf(jobText, ...options) {
  return pageOf('report', jobText, ...options);
}

/** Path of the card to fill in at a window. */
export function surveyCard() {
  const path = join(folder, 'survey-card.html');
  dewgap('survey-card', '--output', path);
  return path;
}

export function exampleText(name) {
  return readFileSync(join(examples, name), 'utf8');
}

export const money = join(examples, 'money.toml');

export async function launch() {
  return chromium.launch({
    executablePath: process.env.DEWGAP_BROWSER ?? '/usr/bin/chromium',
    args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
  });
}

/** Opens a page with no network; `requests` has every address that was asked for. */
export async function open(browser, path, width = 1280) {
  const context = await browser.newContext({ viewport: { width, height: 900 }, offline: true });
  const page = await context.newPage();
  const requests = [];
  const surprises = [];
  page.on('request', (request) => requests.push(request.url()));
  page.on('dialog', (dialog) => { surprises.push(dialog.message()); dialog.dismiss(); });
  page.on('pageerror', (error) => surprises.push(String(error)));
  page.on('console', (message) => { if (message.type() === 'error') surprises.push(message.text()); });
  await page.goto(`file://${path}`);
  return { page, requests, surprises, close: () => context.close() };
}
