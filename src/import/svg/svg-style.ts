/** The little of CSS that says whether a shape is seen and what colour fills it. */
import type { XmlElement } from './read-xml.ts';

/** What an element hands on to those in it. */
export interface Look {
  /** As written, in lower case; 'none' where nothing fills. */
  readonly fill: string;
  readonly stroke: string;
  readonly hidden: boolean;
}

export const FIRST_LOOK: Look = { fill: '#000000', stroke: 'none', hidden: false };

type Declarations = ReadonlyMap<string, string>;
/** By selector: "tag", ".class" or "#id". */
export type Sheet = ReadonlyMap<string, Declarations>;

const MOST_RULES = 2_000;

/** Rules for a tag, a class or an id alone; others are passed over, as is every @-rule. Nothing is fetched. */
export function parseSheet(text: string): Sheet {
  const sheet = new Map<string, Map<string, string>>();
  const plain = text.replace(/\/\*[^*]*\*+(?:[^/*][^*]*\*+)*\//g, ' ');
  let rules = 0;
  for (const rule of plain.split('}')) {
    const [selectors = '', body] = rule.split('{');
    if (body === undefined || ++rules > MOST_RULES) continue;
    for (const selector of selectors.split(',').map((each) => each.trim())) {
      if (!/^[.#]?[\w-]+$/.test(selector)) continue;
      const known = sheet.get(selector) ?? new Map<string, string>();
      for (const [name, value] of declarations(body)) known.set(name, value);
      sheet.set(selector, known);
    }
  }
  return sheet;
}

/** Whether a style sheet asks for something from elsewhere, which is not fetched. */
export const asksElsewhere = (text: string): boolean => /@import|url\(\s*['"]?\s*(?!#|['"]?#)[^)\s]/i.test(text);

function declarations(text: string): Declarations {
  const pairs = text.split(';').flatMap((each) => {
    const colon = each.indexOf(':');
    return colon < 0
      ? []
      : [
          [
            each.slice(0, colon).trim().toLowerCase(),
            each
              .slice(colon + 1)
              .replace(/!important/i, '')
              .trim(),
          ] as const,
        ];
  });
  return new Map(pairs);
}

/** The look of an element: its attributes, then the sheet by tag, class and id, then its own style. */
export function lookOf(element: XmlElement, above: Look, sheet: Sheet): Look {
  const { attributes } = element;
  const classes = (attributes.get('class') ?? '').split(/\s+/).slice(0, 20);
  const layers: Declarations[] = [
    attributes,
    ...[element.name, ...classes.map((name) => `.${name}`), `#${attributes.get('id') ?? ''}`].flatMap(
      (selector) => sheet.get(selector) ?? [],
    ),
    declarations(attributes.get('style') ?? ''),
  ];
  const said = (name: string): string | undefined => {
    const value = layers
      .findLast((layer) => layer.has(name))
      ?.get(name)
      ?.trim()
      .toLowerCase();
    return value === 'inherit' || value === '' ? undefined : value;
  };
  const transparent = said('fill-opacity') === '0';
  const fill = said('fill');
  const stroke = said('stroke');
  const visibility = said('visibility');
  return {
    fill: transparent ? 'none' : fill === undefined ? above.fill : colour(fill),
    stroke: stroke === undefined ? above.stroke : colour(stroke),
    hidden:
      above.hidden ||
      said('display') === 'none' ||
      visibility === 'hidden' ||
      visibility === 'collapse' ||
      said('opacity') === '0',
  };
}

/** Colours written in different ways come out alike: #rrggbb, or the name as written. */
function colour(text: string): string {
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/.exec(text);
  if (short !== null)
    return `#${short
      .slice(1)
      .map((digit) => digit + digit)
      .join('')}`;
  const numbers = /^rgba?\(([^()]*)\)$/.exec(text);
  const parts = (numbers?.[1] ?? '').split(/[\s,/]+/).filter((part) => part !== '');
  if (parts.length < 3) return text === 'transparent' ? 'none' : text;
  if (parts[3] !== undefined && Number.parseFloat(parts[3]) === 0) return 'none';
  const hex = parts.slice(0, 3).map((part) => {
    const value = Number.parseFloat(part) * (part.endsWith('%') ? 2.55 : 1);
    return Math.max(0, Math.min(255, Math.round(value) || 0))
      .toString(16)
      .padStart(2, '0');
  });
  return `#${hex.join('')}`;
}
