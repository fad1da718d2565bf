import type { Drawing, Item, PathItem, TextItem } from './display-list.ts';
import { DRAWING_CSS } from './drawing-style.ts';
import { inkOn } from './ink.ts';
import { pathData, short } from './path-data.ts';
import { type Pattern, patternOf, patternsOf, printInk, scaledTile } from './prints.ts';

/**
 * A drawing as the text of an SVG file that stands alone.
 * @param scale how many pixels one unit of the drawing gets at the file's natural size
 */
export function toSvg(drawing: Drawing, scale: number): string {
  const { left, bottom, width, height } = drawing.box;
  const viewBox = [left, -bottom - height, width, height].map(short).join(' ');
  const size = `width="${short(width * scale)}" height="${short(height * scale)}"`;
  const patterns = patternsOf(drawing.items).map((pattern) => patternText(pattern, drawing.printSpacing));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" viewBox="${viewBox}" ${size} role="img">`,
    `<title>${escapeXml(drawing.title)}</title>`,
    `<desc>${escapeXml(drawing.description)}</desc>`,
    `<style>${DRAWING_CSS}</style>`,
    `<defs>${patterns.join('')}</defs>`,
    `<rect x="${short(left)}" y="${short(-bottom - height)}" width="${short(width)}" height="${short(height)}" fill="#fffdf8"/>`,
    ...drawing.items.map(itemText),
    '</svg>',
    '',
  ].join('\n');
}

function itemText(item: Item): string {
  switch (item.kind) {
    case 'path':
      return `<path class="${item.class}" d="${pathData(item)}"${paintText(item)}/>`;
    case 'text':
      return textText(item);
    case 'group': {
      const id = item.id === undefined ? '' : ` id="${escapeXml(item.id)}"`;
      const data = Object.entries(item.data ?? {}).map(([name, value]) => ` data-${name}="${escapeXml(value)}"`);
      return `<g class="${item.class}"${id}${data.join('')}>${item.items.map(itemText).join('')}</g>`;
    }
  }
}

function paintText(item: PathItem): string {
  const parts: string[] = [];
  if (item.fill !== undefined) {
    const pattern = patternOf(item.fill);
    parts.push(`fill:${pattern === null ? item.fill.colour : `url(#${pattern.key})`}`);
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

function patternText(pattern: Pattern, size: number): string {
  const lines = pathData({ kind: 'path', class: 'seam', runs: scaledTile(pattern.print, size) });
  const box = `width="${short(size)}" height="${short(size)}"`;
  return (
    `<pattern id="${pattern.key}" patternUnits="userSpaceOnUse" ${box} patternTransform="rotate(${short(-pattern.turn)})">` +
    `<rect ${box} fill="${pattern.colour}"/>` +
    `<path d="${lines}" transform="translate(0 ${short(size)})" style="fill:none;stroke:${printInk(pattern.colour)};stroke-width:1px"/></pattern>`
  );
}

function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
