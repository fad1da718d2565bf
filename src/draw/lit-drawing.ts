import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { Drawing, Item, PathItem, TextItem } from './display-list.ts';
import { inkOn } from './ink.ts';
import { pathData, short } from './path-data.ts';
import { type Pattern, patternOf, patternsOf, printInk, scaledTile } from './prints.ts';

/**
 * A drawing live on the page. Its look comes from the page's style sheet (drawing-style.ts).
 * @param prefix told apart from every other drawing's on the page, since ids of patterns are shared by all of a page
 */
export function litDrawing(drawing: Drawing, prefix: string): TemplateResult {
  const { left, bottom, width, height } = drawing.box;
  const viewBox = [left, -bottom - height, width, height].map(short).join(' ');
  const patterns = patternsOf(drawing.items).map((pattern) => patternNode(pattern, drawing.printSpacing, prefix));
  return html`<svg
    class="drawing"
    viewBox=${viewBox}
    style="aspect-ratio:${short(width)} / ${short(height)}"
    role="img"
    aria-label="${drawing.title}. ${drawing.description}"
  >
    <defs>${patterns}</defs>
    ${drawing.items.map((item) => itemNode(item, prefix))}
  </svg>`;
}

function itemNode(item: Item, prefix: string): SVGTemplateResult {
  switch (item.kind) {
    case 'path':
      return svg`<path class=${item.class} d=${pathData(item)} style=${paintStyle(item, prefix)} />`;
    case 'text':
      return textNode(item);
    case 'group':
      return svg`<g class=${item.class} data-blank=${item.data?.blank ?? nothing} data-patch=${item.data?.patch ?? nothing}
        >${item.items.map((inner) => itemNode(inner, prefix))}</g>`;
  }
}

function paintStyle(item: PathItem, prefix: string): string | typeof nothing {
  const parts: string[] = [];
  if (item.fill !== undefined) {
    const pattern = patternOf(item.fill);
    parts.push(`fill:${pattern === null ? item.fill.colour : `url(#${prefix}-${pattern.key})`}`);
  }
  if (item.ink !== undefined) {
    parts.push(`stroke:${item.ink}`);
  }
  return parts.length === 0 ? nothing : parts.join(';');
}

function textNode(item: TextItem): SVGTemplateResult {
  const [x, y] = [short(item.at[0]), short(-item.at[1])];
  const turn = item.turn ? `rotate(${short(-item.turn)} ${x} ${y})` : nothing;
  return svg`<text class=${item.class} x=${x} y=${y} font-size=${short(item.size)} text-anchor=${item.anchor}
    dominant-baseline="central" transform=${turn} style=${haloStyle(item)}>${item.text}</text>`;
}

/** Readable ink with a halo of the cloth's own colour, so that neither seams nor the print run through a letter. */
function haloStyle(item: TextItem): string | typeof nothing {
  if (item.on === undefined) {
    return nothing;
  }
  return `fill:${inkOn(item.on)};stroke:${item.on};stroke-width:${short(item.size * 0.22)};paint-order:stroke`;
}

function patternNode(pattern: Pattern, size: number, prefix: string): SVGTemplateResult {
  const lines = pathData({ kind: 'path', class: 'seam', runs: scaledTile(pattern.print, size) });
  const side = short(size);
  return svg`<pattern id="${prefix}-${pattern.key}" patternUnits="userSpaceOnUse" width=${side} height=${side}
    patternTransform="rotate(${short(-pattern.turn)})">
    <rect width=${side} height=${side} fill=${pattern.colour} />
    <path d=${lines} transform="translate(0 ${side})" style="fill:none;stroke:${printInk(pattern.colour)};stroke-width:1px" />
  </pattern>`;
}
