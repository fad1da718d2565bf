import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import { pathData } from '../draw/path-data.ts';
import { printInk, scaledTile } from '../draw/prints.ts';
import type { Cloth } from '../quilt/quilt.ts';

/** A snippet of a cloth beside its name. It says nothing that the name does not. */
export function swatch(cloth: Cloth | undefined): TemplateResult {
  const colour = cloth?.colour ?? '#d8d4cc';
  const tile = cloth === undefined ? [] : scaledTile(cloth.print, 12);
  const line = (x: number, y: number): SVGTemplateResult =>
    svg`<path d=${pathData({ kind: 'path', class: 'seam', runs: tile })} transform="translate(${x} ${y})"
      style="fill:none;stroke:${printInk(colour)};stroke-width:1.4" />`;
  return html`<svg class="swatch" viewBox="0 0 24 24" aria-hidden="true">
    <rect width="24" height="24" fill=${colour} />
    ${line(0, 12)}${line(12, 12)}${line(0, 24)}${line(12, 24)}
  </svg>`;
}
