import type { Box, Drawing, Item, PathItem, TextItem } from './display-list.ts';
import { DRAWING_CSS } from './drawing-style.ts';
import { inkOn, mix } from './ink.ts';
import { pathData, short } from './path-data.ts';
import { printArt, scaledRuns } from './print-art.ts';
import { type Pattern, patternOf, patternsOf, printInk, scaledTile } from './prints.ts';

/**
 * A drawing as the text of an SVG file that stands alone.
 * @param scale how many pixels one unit of the drawing gets at the file's natural size
 */
export function toSvg(drawing: Drawing, scale: number): string {
  const { left, bottom, width, height } = drawing.box;
  const size = `width="${short(width * scale)}" height="${short(height * scale)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" viewBox="${viewBox(drawing)}" ${size} role="img">`,
    `<title>${escapeXml(drawing.title)}</title>`,
    `<desc>${escapeXml(drawing.description)}</desc>`,
    `<style>${DRAWING_CSS}</style>`,
    `<rect x="${short(left)}" y="${short(-bottom - height)}" width="${short(width)}" height="${short(height)}" fill="#fffdf8"/>`,
    ...contents(drawing, 'print'),
    '</svg>',
    '',
  ].join('\n');
}

/**
 * The same as an element of a page, whose style sheet (drawing-style.ts) gives it its look. Text, because a browser reads a
 * drawing of thousands of lines several times as fast as a script can put it together.
 * @param prefix told apart from every other drawing's on the page, since ids of patterns are shared by all of a page; null:
 * cloth in plain colours, for paper, where a browser writes a pattern out tile by tile
 */
export function svgElement(drawing: Drawing, prefix: string | null): string {
  const { width, height } = drawing.box;
  const ratio = `style="aspect-ratio:${short(width)} / ${short(height)}"`;
  const name = `aria-label="${escapeXml(`${drawing.title}. ${drawing.description}`)}"`;
  return [
    `<svg class="drawing" viewBox="${viewBox(drawing)}" ${ratio} role="img" ${name}>`,
    ...contents(drawing, prefix),
    '</svg>',
  ].join('');
}

function viewBox({ box: { left, bottom, width, height } }: Drawing): string {
  return [left, -bottom - height, width, height].map(short).join(' ');
}

function contents(drawing: Drawing, prefix: string | null): readonly string[] {
  const patterns =
    prefix === null
      ? []
      : patternsOf(drawing.items).map((pattern) => patternText(pattern, drawing.printSpacing, prefix));
  return [`<defs>${patterns.join('')}</defs>`, ...drawing.items.map((item) => itemText(item, prefix))];
}

function itemText(item: Item, prefix: string | null): string {
  switch (item.kind) {
    case 'path':
      return `<path class="${item.class}" d="${pathData(item)}"${paintText(item, prefix)}/>`;
    case 'text':
      return textText(item);
    case 'group': {
      const data = Object.entries(item.data ?? {}).map(([name, value]) => ` data-${name}="${escapeXml(value)}"`);
      const inner = item.items.map((each) => itemText(each, prefix)).join('');
      return `<g class="${item.class}"${data.join('')}>${item.clip === undefined ? inner : clipped(inner, item.clip)}</g>`;
    }
  }
}

/** An svg within shows nothing beyond its own box, and needs no id, which would have to differ from every other drawing's. */
function clipped(inner: string, { left, bottom, width, height }: Box): string {
  const [x, y, wide, tall] = [left, -bottom - height, width, height].map(short);
  return `<svg x="${x}" y="${y}" width="${wide}" height="${tall}" viewBox="${x} ${y} ${wide} ${tall}">${inner}</svg>`;
}

function paintText(item: PathItem, prefix: string | null): string {
  const parts: string[] = [];
  if (item.fill !== undefined) {
    const pattern = prefix === null ? null : patternOf(item.fill);
    parts.push(`fill:${pattern === null ? item.fill.colour : `url(#${prefix}-${pattern.key})`}`);
  }
  if (item.ink !== undefined) {
    parts.push(`stroke:${item.ink}`);
  }
  return parts.length === 0 ? '' : ` style="${parts.join(';')}"`;
}

function textText(item: TextItem): string {
  const [x, y] = [short(item.at[0]), short(-item.at[1])];
  const turn = item.turn ? ` transform="rotate(${short(-item.turn)} ${x} ${y})"` : '';
  const on = item.on === undefined ? '' : haloStyle(item.on, item.size);
  return `<text class="${item.class}" x="${x}" y="${y}" font-size="${short(item.size)}" text-anchor="${item.anchor}" dominant-baseline="central"${turn}${on}>${escapeXml(item.text)}</text>`;
}

/** Readable ink with a halo of the cloth's own colour, so that neither seams nor the print run through a letter. */
function haloStyle(colour: string, size: number): string {
  return ` style="fill:${inkOn(colour)};stroke:${colour};stroke-width:${short(size * 0.22)};paint-order:stroke"`;
}

function patternText(pattern: Pattern, hint: number, prefix: string): string {
  const size = pattern.repeat ?? hint;
  const art = pattern.repeat === undefined ? null : printArt(pattern.print);
  const runs = art === null ? scaledTile(pattern.print, size) : scaledRuns(art.lines, size);
  const lines = pathData({ kind: 'path', class: 'seam', runs });
  const bands = art === null ? '' : pathData({ kind: 'path', class: 'seam', runs: scaledRuns(art.bands, size) });
  const box = `width="${short(size)}" height="${short(size)}"`;
  const lift = `transform="translate(0 ${short(size)})"`;
  const ink = art === null ? printInk(pattern.colour) : mix(pattern.colour, inkOn(pattern.colour), 0.42);
  return (
    `<pattern id="${prefix}-${pattern.key}" patternUnits="userSpaceOnUse" ${box} patternTransform="rotate(${short(-pattern.turn)})">` +
    `<rect ${box} fill="${pattern.colour}"/>` +
    `${bands === '' ? '' : `<path d="${bands}" ${lift} style="fill:${ink};stroke:none"/>`}` +
    `<path d="${lines}" ${lift} style="fill:none;stroke:${ink};stroke-width:${art === null ? 1 : 1.6}px"/></pattern>`
  );
}

export function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
