/**
 * The text of an SVG file as a plain tree. Nothing in it is run, fetched or expanded: scripts, pictures and whatever else is
 * no drawing are left out while reading, and counted. Limits come before memory: length first, then elements and depth.
 */
import { SaxesParser } from 'saxes';
import { ImportFault } from '../import-fault.ts';

export interface XmlElement {
  /** Without the prefix of its namespace. */
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** Its own text and that of what it holds, in order; only where text means something. */
  readonly text: string;
  readonly line: number;
}

export interface ReadXml {
  readonly root: XmlElement;
  /** What was left out for safety, and how often: "script", "picture" … */
  readonly leftOut: ReadonlyMap<string, number>;
}

/** Characters. A drawing of two thousand patches takes less than a tenth of it. */
export const LONGEST_FILE = 5_000_000;
const MOST_ELEMENTS = 50_000;
const DEEPEST = 80;
const MOST_ATTRIBUTES = 100;
const LONGEST_TEXT = 20_000;

/** What is left out with all that it holds, and what it is called when that is told. */
const LEFT_OUT: ReadonlyMap<string, string> = new Map([
  ['script', 'script'],
  ['handler', 'script'],
  ['foreignobject', 'foreign content'],
  ['iframe', 'foreign content'],
  ['object', 'foreign content'],
  ['embed', 'foreign content'],
  ['audio', 'foreign content'],
  ['video', 'foreign content'],
  ['image', 'picture'],
  ['feimage', 'picture'],
  ['animate', 'animation'],
  ['animatetransform', 'animation'],
  ['animatemotion', 'animation'],
  ['set', 'animation'],
]);
const WITH_TEXT: ReadonlySet<string> = new Set(['text', 'tspan', 'textPath', 'title', 'desc', 'style']);

interface Open {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: XmlElement[];
  text: string;
  readonly line: number;
}

/** @throws ImportFault for what is no SVG file, is too large, or defines entities */
export function readXml(text: string): ReadXml {
  if (text.length > LONGEST_FILE) {
    throw new ImportFault(
      `The file has ${millions(text.length)} million characters; at most ${millions(LONGEST_FILE)} million are read. Save the block alone, without pictures.`,
    );
  }
  const reader = new Reader();
  reader.read(text);
  return { root: reader.finished(), leftOut: reader.leftOut };
}

class Reader {
  readonly leftOut = new Map<string, number>();
  private readonly open: Open[] = [];
  private root: XmlElement | null = null;
  private elements = 0;
  /** How deep inside something left out; 0 outside. */
  private inLeftOut = 0;
  private readonly parser = new SaxesParser({ position: true });

  constructor() {
    this.parser.on('error', (error) => {
      throw new ImportFault(
        `This is not a whole SVG file: line ${error.message.replace(/^(\d+):(\d+): /, '$1, place $2: ')}`,
      );
    });
    this.parser.on('doctype', (doctype) => this.onDoctype(doctype));
    this.parser.on('opentag', ({ name, attributes }) => this.onOpen(name, attributes as Record<string, string>));
    this.parser.on('closetag', () => this.onClose());
    this.parser.on('text', (words) => this.onText(words));
    this.parser.on('cdata', (words) => this.onText(words));
  }

  read(text: string): void {
    this.parser.write(text).close();
  }

  finished(): XmlElement {
    if (this.root?.name !== 'svg') {
      throw new ImportFault('This is not an SVG file: it does not begin with an svg element.');
    }
    return this.root;
  }

  /** A bare document type is harmless, and never fetched; one with entities may be a bomb. */
  private onDoctype(doctype: string): void {
    if (doctype.includes('[') || /ENTITY/i.test(doctype)) {
      throw new ImportFault(
        'The file defines entities of its own, which are not read. Save it again as “plain SVG” from the drawing program.',
      );
    }
  }

  private onOpen(fullName: string, attributes: Readonly<Record<string, string>>): void {
    this.elements++;
    if (this.elements > MOST_ELEMENTS) {
      throw new ImportFault(`The file has more than ${MOST_ELEMENTS} elements. Save the block alone.`);
    }
    const name = fullName.startsWith('svg:') ? fullName.slice(4) : fullName;
    if (this.inLeftOut > 0) {
      this.inLeftOut++;
      return;
    }
    const called = LEFT_OUT.get(name.toLowerCase());
    if (called !== undefined || name.includes(':')) {
      // What another program keeps in a namespace of its own is no drawing and not worth a word.
      if (called !== undefined) this.count(called);
      this.inLeftOut = 1;
      return;
    }
    if (this.open.length >= DEEPEST) {
      throw new ImportFault(`Line ${this.parser.line}: more than ${DEEPEST} elements inside one another.`);
    }
    this.open.push({ name, attributes: this.kept(attributes), children: [], text: '', line: this.parser.line });
  }

  private kept(attributes: Readonly<Record<string, string>>): ReadonlyMap<string, string> {
    const entries = Object.entries(attributes);
    if (entries.length > MOST_ATTRIBUTES) {
      throw new ImportFault(`Line ${this.parser.line}: an element with more than ${MOST_ATTRIBUTES} attributes.`);
    }
    const kept = entries.filter(([name]) => !/^on/i.test(name));
    if (kept.length < entries.length) this.count('script');
    return new Map(kept);
  }

  private onClose(): void {
    if (this.inLeftOut > 0) {
      this.inLeftOut--;
      return;
    }
    const done = this.open.pop();
    const parent = this.open.at(-1);
    if (done === undefined) return;
    if (parent === undefined) {
      this.root = done;
      return;
    }
    parent.children.push(done);
    if (WITH_TEXT.has(parent.name)) {
      parent.text = `${parent.text} ${done.text}`.slice(0, LONGEST_TEXT);
    }
  }

  private onText(words: string): void {
    const holder = this.open.at(-1);
    if (this.inLeftOut === 0 && holder !== undefined && WITH_TEXT.has(holder.name)) {
      holder.text = (holder.text + words).slice(0, LONGEST_TEXT);
    }
  }

  private count(called: string): void {
    this.leftOut.set(called, (this.leftOut.get(called) ?? 0) + 1);
  }
}

const millions = (count: number): string => (count / 1e6).toFixed(1).replace(/\.0$/, '');
