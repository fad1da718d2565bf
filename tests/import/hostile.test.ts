/** Files that mean harm, or are only far too large: refused or left out aloud, never run, fetched or waited for. */
import { expect, test } from 'vitest';
import { type ImportedSvg, importSvg } from '../../src/import/import-svg.ts';

const read = (text: string): ImportedSvg => importSvg(text, { unit: 'in', name: 'Block' });
const svg = (inside: string, more = ''): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="4in" height="4in" viewBox="0 0 4 4"${more}>${inside}</svg>`;
const square = '<rect width="4" height="4" fill="#336699"/>';
const said = (text: string): string =>
  read(text)
    .notes.map(({ kind, text: words }) => `${kind}: ${words}`)
    .join('\n');

test.each([
  ['no SVG', 'hello', /error: This is not a whole SVG file/],
  ['another kind of XML', '<html xmlns="http://www.w3.org/1999/xhtml"/>', /error: This is not an SVG file/],
  ['cut short', '<svg width="4in"><g><rect width="1"', /error: This is not a whole SVG file/],
  ['nothing drawn', svg(''), /error: The file holds no closed shapes/],
  [
    'entities within entities',
    `<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;">]>${svg('<text>&b;</text>')}`,
    /error: The file defines entities/,
  ],
  [
    'an entity from elsewhere',
    `<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>${svg('<text>&x;</text>')}`,
    /error: The file defines entities/,
  ],
  ['an undefined entity', svg('<text>&x;</text>'), /error: .*undefined entity/],
  ['50 MB', `${svg(square)}${' '.repeat(50_000_000)}`, /error: The file has 50 million characters; at most 5 million/],
  [
    'thousands of groups in one another',
    `${'<svg>'.repeat(1)}${'<g>'.repeat(5_000)}`,
    /error: .*more than 80 elements inside one another/,
  ],
  ['too many elements', svg('<g/>'.repeat(60_000)), /error: .*more than 50000 elements/],
  [
    'too many attributes',
    svg(`<rect ${Array.from({ length: 500 }, (_, i) => `a${i}=""`).join(' ')}/>`),
    /error: .*more than 100 attributes/,
  ],
  ['too many shapes', svg('<path d="M0 0H1V1Z"/>'.repeat(7_000)), /error: .*more than 6000 shapes/],
])('%s is refused', (_, text, words) => {
  expect(read(text).block).toBe(null);
  expect(said(text)).toMatch(words);
});

test.each([
  ['a script', svg(`${square}<script>throw 1</script>`), /Left out: script/],
  ['an event handler', svg(square, ' onload="throw 1"'), /Left out: script/],
  ['foreign content', svg(`${square}<foreignObject><p>x</p></foreignObject>`), /Left out: foreign content/],
  [
    'a picture from elsewhere',
    svg(`${square}<image href="https://example.org/x.png" width="1" height="1"/>`),
    /Left out: picture/,
  ],
  ['a picture in the file', svg(`${square}<image xlink:href="data:image/svg+xml;base64,AAAA"/>`), /Left out: picture/],
  [
    'a part of another file',
    svg(`${square}<use xlink:href="https://example.org/x.svg#a"/>`),
    /Left out: reference to something outside the file/,
  ],
  [
    'a style sheet from elsewhere',
    svg(`<style>@import url(https://example.org/x.css);</style>${square}`),
    /Left out: reference to something outside/,
  ],
  [
    'an animation',
    svg(`<rect width="4" height="4" fill="#336699"><animate attributeName="x" to="9"/></rect>`),
    /Left out: animation/,
  ],
  [
    'a document type',
    `<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">${svg(square)}`,
    /colour is a role/,
  ],
  ['a part that uses itself', svg(`${square}<g id="a"><use href="#a"/></g>`), /holds it/],
  [
    'a transform that is none',
    svg(`${square}<rect width="1" height="1" transform="explode(7)"/>`),
    /its transform cannot be read/,
  ],
  ['numbers beyond all measure', svg(`${square}<path d="M0 0L1e300 0 1e300 1e300Z"/>`), /beyond all measure/],
  ['a percentage', svg(`${square}<rect width="50%" height="1"/>`), /its width is “50%”/],
  ['a broken path', svg(`${square}<path d="M5 0H6V1H5Z M7 7 L nonsense"/>`), /cannot be read to the end/],
  ['a shape with a hole', svg(`${square}<path d="M5 0H9V4H5Z M6 1H8V3H6Z"/>`), /has a hole, and is left out/],
  ['an outline that crosses itself', svg(`${square}<path d="M5 0L6 1L6 0L5 1Z"/>`), /crosses itself, and is left out/],
])('%s is left out aloud, and the rest is there', (_, text, words) => {
  expect(read(text).block?.units[0]?.patches.length).toBeGreaterThan(0);
  expect(said(text)).toMatch(words);
});

/** Each grows with the square of its length, or worse, if it is read carelessly; a careless reader would not come to an end. */
test.each([
  [
    'uses of uses of uses',
    svg(
      `${Array.from(
        { length: 30 },
        (_, i) => `<g id="g${i + 1}">${'<use href="#g'.concat(`${i}"/>`).repeat(10)}</g>`,
      ).join('')}<g id="g0">${square}</g>`,
    ),
  ],
  ['squares all in one place', svg(square.repeat(500))],
  [
    'needles over one another',
    svg(
      Array.from({ length: 500 }, (_, i) => `<path d="M0 ${i / 500}L4 ${4 - i / 500}L4 ${4.01 - i / 500}Z"/>`).join(''),
    ),
  ],
  ['curves by the thousand', svg(`<path d="M0 0${'C1 3 3 -3 4 0'.repeat(20_000)}Z"/>`)],
  ['corners by the thousand in one place', svg(`<polygon points="${'0,0 1e-9,1e-9 '.repeat(100_000)}"/>`)],
  ['rules by the thousand', svg(`<style>${'.a{fill:red}'.repeat(200_000)}</style>${square}`)],
  ['comments and blanks', svg(`<!--${' -'.repeat(1_000_000)} -->${square}`)],
  ['transforms by the thousand', svg(`<g transform="${'scale(1)'.repeat(200_000)}">${square}</g>`)],
])('%s come to an end', (_, text) => {
  const { notes } = read(text);
  expect(notes.length).toBeLessThan(300);
});
