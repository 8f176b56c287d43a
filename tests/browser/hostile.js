// Names that try to break out of the page.
import { exampleText } from './pages.js';

const script = '<script>document.title="taken"</script><img src=x onerror="document.title=\'taken\'">';
export const hostileNames = {
  markup: script,
  'the end of a script element': `</script>${script}<!--`,
  quotes: `" onmouseover="document.title='taken'" x='y' \``,
  'braces of a template': '{{#windows}}{{{style}}}{{/windows}}{{> house_part}}',
  'right-to-left': '\u05d7\u05dc\u05d5\u05df \u202e\u2066 abc \u0646\u0627\u0641\u0630\u0629 (1)',
  '500 characters without a blank': 'W'.repeat(500),
  '500 characters of markup': script.repeat(6).slice(0, 500),
  'line separators': 'one\u2028two\u2029three',
};

/** A text as TOML writes it. */
function quoted(text) {
  return JSON.stringify(text).replace(/[\u2028\u2029\u202e\u2066]/g, (c) => `\\u${c.charCodeAt(0).toString(16)}`);
}

/** An example with the text as name, as note and as the one who answered. */
export function jobNamed(name, example = 'old-sash.toml') {
  return exampleText(example)
    .replace(/^name = .*$/m, () => `name = ${quoted(name)}`)
    .replace(/^note = .*$/m, () => `note = ${quoted(name)}`)
    .replace(/^answered_by = .*$/m, () => `answered_by = ${quoted([...name].slice(0, 120).join(''))}`);
}
