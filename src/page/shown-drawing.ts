import type { TemplateResult } from 'lit';
import { html } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import type { Drawing } from '../draw/display-list.ts';
import { svgElement } from '../draw/to-svg.ts';

/**
 * A drawing live on the page, made anew only when it is another drawing. Its text is ours: what comes from a quilt file is
 * escaped in it.
 * @param prefix told apart from every other drawing's on the page
 */
export function shownDrawing(drawing: Drawing, prefix: string): TemplateResult {
  return html`${guard([drawing], () => unsafeHTML(svgElement(drawing, prefix)))}`;
}
