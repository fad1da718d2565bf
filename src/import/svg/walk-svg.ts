/** Goes through an SVG tree as a browser would draw it and gathers shapes and words, each with its transform and groups. */
import type { Point } from '../../shape/point.ts';
import { ImportFault } from '../import-fault.ts';
import { followedBy, IDENTITY, type Matrix, moving, parseTransform } from './matrix.ts';
import { shapeOf, type UserRun } from './path-segments.ts';
import type { XmlElement } from './read-xml.ts';
import { userLength } from './svg-length.ts';
import { asksElsewhere, FIRST_LOOK, type Look, lookOf, parseSheet, type Sheet } from './svg-style.ts';
import { parseViewBox, viewBoxMatrix } from './view-box.ts';

/** A group, or one use of something drawn elsewhere in the file. */
export interface SvgGroup {
  readonly key: number;
  readonly names: Names;
}

/** What the file calls a thing. */
export interface Names {
  readonly id: string;
  readonly title: string;
  /** The name that a drawing program shows for it. */
  readonly label: string;
  /** A role's id, as our own files carry it. */
  readonly role: string;
  /** Of a group: the unit's letter, and whether it is sewn on paper, as our own files carry them. */
  readonly unit: string;
  readonly paper: boolean;
}

export interface SvgShape {
  readonly names: Names;
  /** From the outermost inward; the svg element is none of them. */
  readonly groups: readonly SvgGroup[];
  readonly runs: readonly UserRun[];
  /** From user units to those of the outermost viewBox. */
  readonly matrix: Matrix;
  readonly look: Look;
  readonly line: number;
}

export interface SvgWords {
  readonly text: string;
  /** About the middle of the words, in user units. */
  readonly at: Point;
  readonly matrix: Matrix;
}

export interface WalkedSvg {
  readonly shapes: readonly SvgShape[];
  readonly words: readonly SvgWords[];
  /** What was passed over, and how often. */
  readonly passed: ReadonlyMap<string, number>;
  /** What could not be read, in words for a person. */
  readonly faults: readonly string[];
}

const MOST_STEPS = 100_000;
const MOST_SHAPES = 6_000;
const DEEPEST = 200;
const MOST_FAULTS = 20;
const LONGEST_NAME = 80;

/** Drawn only where something refers to them. */
const NOT_DRAWN: ReadonlySet<string> = new Set([
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'pattern',
  'marker',
  'linearGradient',
  'radialGradient',
  'filter',
  'metadata',
  'style',
  'title',
  'desc',
  'font',
  'cursor',
  'view',
]);
const GROUPS: ReadonlySet<string> = new Set(['g', 'a', 'svg', 'switch']);

export function walkSvg(root: XmlElement): WalkedSvg {
  const walk = new Walk(root);
  walk.children(root, { matrix: IDENTITY, look: lookOf(root, FIRST_LOOK, walk.sheet), groups: [], uses: [], depth: 0 });
  return walk;
}

interface Above {
  readonly matrix: Matrix;
  readonly look: Look;
  readonly groups: readonly SvgGroup[];
  /** What is being used just now, so that nothing uses itself. */
  readonly uses: readonly XmlElement[];
  readonly depth: number;
}

class Walk implements WalkedSvg {
  readonly shapes: SvgShape[] = [];
  readonly words: SvgWords[] = [];
  readonly passed = new Map<string, number>();
  readonly faults: string[] = [];
  readonly sheet: Sheet;
  private readonly byId = new Map<string, XmlElement>();
  private steps = 0;

  constructor(root: XmlElement) {
    const styles: string[] = [];
    const gather = (element: XmlElement): void => {
      const id = element.attributes.get('id');
      if (id !== undefined && !this.byId.has(id)) this.byId.set(id, element);
      if (element.name === 'style') styles.push(element.text);
      element.children.forEach(gather);
    };
    gather(root);
    if (styles.some(asksElsewhere)) this.count('reference to something outside the file');
    this.sheet = parseSheet(styles.join('\n'));
  }

  children(element: XmlElement, above: Above): void {
    for (const child of element.children) this.visit(child, above);
  }

  private visit(element: XmlElement, above: Above): void {
    if (++this.steps > MOST_STEPS || above.depth > DEEPEST) {
      throw new ImportFault(
        'The drawing uses its own parts over and over, more often than can be read. Save the block alone.',
      );
    }
    if (NOT_DRAWN.has(element.name)) return;
    const look = lookOf(element, above.look, this.sheet);
    if (look.hidden && (GROUPS.has(element.name) || element.name === 'use' || shapeOf(element) !== null)) {
      this.count('hidden part');
      return;
    }
    const own = parseTransform((element.attributes.get('transform') ?? '').slice(0, 4_000));
    if (own === null) {
      this.fault(element, 'its transform cannot be read, so it is left out');
      return;
    }
    const here: Above = { ...above, look, matrix: followedBy(own, above.matrix), depth: above.depth + 1 };
    if (element.name === 'use') {
      this.use(element, here);
    } else if (GROUPS.has(element.name)) {
      const matrix = element.name === 'svg' ? followedBy(nestedViewport(element), here.matrix) : here.matrix;
      this.children(element, { ...here, matrix, groups: this.inGroup(element, above) });
    } else if (element.name === 'text') {
      this.text(element, here);
    } else {
      this.shape(element, here);
    }
  }

  private inGroup(element: XmlElement, above: Above): readonly SvgGroup[] {
    return [...above.groups, { key: this.steps, names: namesOf(element) }];
  }

  /** What is used stands in a group of its own, moved by x and y. */
  private use(element: XmlElement, here: Above): void {
    const href = (element.attributes.get('href') ?? element.attributes.get('xlink:href') ?? '').trim();
    const used = href.startsWith('#') ? this.byId.get(href.slice(1)) : undefined;
    if (!href.startsWith('#')) {
      this.count('reference to something outside the file');
      return;
    }
    if (used === undefined || here.uses.includes(used)) {
      this.fault(
        element,
        `it uses “${href.slice(0, LONGEST_NAME)}”, which ${used === undefined ? 'is not in the file' : 'holds it'}`,
      );
      return;
    }
    const by = moving(userLength(element.attributes.get('x')) ?? 0, userLength(element.attributes.get('y')) ?? 0);
    const inside: Above = {
      ...here,
      matrix: followedBy(by, here.matrix),
      groups: this.inGroup(element, here),
      uses: [...here.uses, used],
    };
    if (used.name !== 'symbol') {
      this.visit(used, inside);
      return;
    }
    const port = symbolViewport(used, element);
    this.children(used, {
      ...inside,
      look: lookOf(used, inside.look, this.sheet),
      matrix: followedBy(port, inside.matrix),
    });
  }

  private shape(element: XmlElement, here: Above): void {
    const shape = shapeOf(element);
    if (shape === null) return;
    if (shape.fault !== null) this.fault(element, shape.fault);
    if (shape.runs.length === 0) return;
    if (this.shapes.length >= MOST_SHAPES) {
      throw new ImportFault(`The drawing has more than ${MOST_SHAPES} shapes. Save the block alone.`);
    }
    if (element.attributes.has('clip-path') || element.attributes.has('mask')) this.count('clipping');
    const { matrix, look, groups } = here;
    this.shapes.push({ names: namesOf(element), groups, runs: shape.runs, matrix, look, line: element.line });
  }

  private text(element: XmlElement, here: Above): void {
    const text = element.text.replace(/\s+/g, ' ').trim().slice(0, LONGEST_NAME);
    const holder = [element, ...element.children].find((each) => each.attributes.has('x') || each.attributes.has('y'));
    const place = (name: string): number =>
      userLength((holder?.attributes.get(name) ?? '0').trim().split(/[\s,]+/)[0]) ?? 0;
    if (text === '' || this.words.length >= MOST_SHAPES) return;
    const size = fontSize(element);
    const anchor = `${element.attributes.get('text-anchor') ?? ''}${element.attributes.get('style') ?? ''}`;
    // Half a letter's width is about a quarter of its size.
    const half = text.length * size * 0.25;
    const shift = anchor.includes('middle') ? 0 : /text-anchor:\s*end|^end/.test(anchor) ? -half : half;
    this.words.push({ text, at: [place('x') + shift, place('y') - 0.3 * size], matrix: here.matrix });
  }

  private fault(element: XmlElement, words: string): void {
    if (this.faults.length < MOST_FAULTS) {
      const id = element.attributes.get('id');
      this.faults.push(
        `${id === undefined ? `The ${element.name}` : `“${id.slice(0, LONGEST_NAME)}”`} in line ${element.line}: ${words}.`,
      );
    }
  }

  private count(called: string): void {
    this.passed.set(called, (this.passed.get(called) ?? 0) + 1);
  }
}

function namesOf(element: XmlElement): Names {
  const said = (text: string | undefined): string => (text ?? '').replace(/\s+/g, ' ').trim().slice(0, LONGEST_NAME);
  return {
    id: said(element.attributes.get('id')),
    title: said(element.children.find((child) => child.name === 'title')?.text),
    label: said(element.attributes.get('inkscape:label') ?? element.attributes.get('data-name')),
    role: said(element.attributes.get('data-role')),
    unit: said(element.attributes.get('data-unit')),
    paper: element.attributes.get('data-paper') !== 'no',
  };
}

function fontSize(element: XmlElement): number {
  const written =
    element.attributes.get('font-size') ?? /font-size:\s*([^;]+)/.exec(element.attributes.get('style') ?? '')?.[1];
  return userLength(written) ?? 16;
}

function nestedViewport(element: XmlElement): Matrix {
  const x = userLength(element.attributes.get('x')) ?? 0;
  const y = userLength(element.attributes.get('y')) ?? 0;
  return viewport(element, x, y, element);
}

const symbolViewport = (symbol: XmlElement, use: XmlElement): Matrix => viewport(symbol, 0, 0, use);

/** @param sized the element whose width and height say how large the viewport is */
function viewport(element: XmlElement, x: number, y: number, sized: XmlElement): Matrix {
  const box = parseViewBox(element.attributes.get('viewBox'));
  if (box === null) return moving(x, y);
  const width = userLength(sized.attributes.get('width')) ?? box.width;
  const height = userLength(sized.attributes.get('height')) ?? box.height;
  return viewBoxMatrix(box, { x, y, width, height }, element.attributes.get('preserveAspectRatio'));
}
