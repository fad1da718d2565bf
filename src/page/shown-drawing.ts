import type { TemplateResult } from 'lit';
import { html } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import type { Drawing } from '../draw/display-list.ts';
import { svgElement } from '../draw/to-svg.ts';

/**
 * A drawing live on the page, made anew only when it is another drawing. Its text is ours: what comes from a quilt file is
 * escaped in it.
 * @param prefix as for svgElement
 */
export function shownDrawing(drawing: Drawing, prefix: string | null): TemplateResult {
  return html`${guard([drawing], () => unsafeHTML(svgElement(drawing, prefix)))}`;
}
