/** The words after `npm run -s plan --`. */
import { parseArgs } from 'node:util';
import {
  type FoundationPaper,
  FREEZER_USES,
  type LabelsPerSheet,
  type PaperChoice,
  type SlipChoice,
} from '../paper/paper-choice.ts';
import type { PaperSize } from '../paper/paper-size.ts';

export interface PlanArguments {
  readonly file: string;
  readonly json: boolean;
  /** Where diagrams and paper are written; null for nowhere. */
  readonly out: string | null;
  /** How the paper is made. */
  readonly papers: Partial<PaperChoice>;
  /** Wall time for all of the planning. */
  readonly seconds: number;
  /** Whether plans that show what facing, room and a rule of thumb cost stand beside it. */
  readonly compare: boolean;
  /** Whether stacks are cut along the strip, whatever the file says. */
  readonly stacks: boolean;
  /** Cloth in hand: then it is told whether that will do, and the rest is not planned. */
  readonly have: readonly HaveArgument[];
}

export interface HaveArgument {
  /** The cloth's id or name. */
  readonly cloth: string;
  /** As written; a bare number is in the quilt's unit. */
  readonly length: string;
}

/** A command line that cannot be understood. */
export class UsageFault extends Error {}

export const USAGE = `usage: npm run -s plan -- FILE [--json] [--out DIR] [--seconds N] [--stacks] [--compare]
                             [--paper a4|letter] [--foundations sewn|freezer:N] [--labels 8|10|12[:unit]] [--slip page|narrow]
       npm run -s plan -- FILE --have CLOTH=LENGTH [--have …] [--json] [--out DIR] [--seconds N]
       npm run -s plan -- --schema

Plans the cutting of a quilt file (*.yardwright.json).
  --json       the jobs, their answers and the tally as JSON, instead of text for people
  --out DIR    writes a diagram (SVG) of every length of cloth, and what is to be printed (PDF), into DIR
  --paper P    a4 or letter; else as the quilt's unit suggests
  --foundations F
               sewn: sewn through, one for each unit; freezer:N: freezer paper used N times, 3 to 8 (freezer:5)
  --slip S     the shopping slip: page, or narrow for a phone (page)
  --labels N   bag labels to a sheet, 8, 10 or 12 (10), one for each block; N:unit for one for each unit
  --seconds N  how long it may plan, all cloths together (20)
  --stacks     small blanks may lie one above the other between two square cuts, and the stack is cut along the strip
  --compare    beside it the plans with facing ignored, without room and by rule of thumb; takes as long again
  --have CLOTH=LENGTH
               whether so much of a cloth will do ("noon-gold=1 1/4 yd"), and if not, what would: less room, facing within
               8°, patches hardly seen lying any way, a spare fewer, another cloth for one role; N seconds each
  --schema     prints the JSON Schema of quilt files`;

/**
 * @param words the command line after the script's name
 * @returns what is asked for; 'schema' or 'help' where no planning is
 * @throws UsageFault with words for a person when they cannot be understood
 */
export function readArguments(words: readonly string[]): PlanArguments | 'schema' | 'help' {
  const { values, positionals } = parse(words);
  if (values.help) {
    return 'help';
  }
  if (values.schema) {
    return 'schema';
  }
  const [file, ...more] = positionals;
  if (file === undefined || more.length > 0) {
    throw new UsageFault(
      file === undefined ? 'no quilt file is named' : `one quilt file at a time; found ${positionals.join(' and ')}`,
    );
  }
  const seconds = Number(values.seconds ?? 20);
  if (!(seconds > 0 && Number.isFinite(seconds))) {
    throw new UsageFault(`--seconds: expected a number above zero; found "${values.seconds}"`);
  }
  if (values.compare && values.have !== undefined) {
    throw new UsageFault('--compare and --have: one at a time');
  }
  return {
    file,
    json: values.json ?? false,
    out: values.out ?? null,
    seconds,
    compare: values.compare ?? false,
    stacks: values.stacks ?? false,
    have: (values.have ?? []).map(readHave),
    papers: readPapers(values),
  };
}

function readPapers(values: {
  readonly paper?: string;
  readonly foundations?: string;
  readonly labels?: string;
  readonly slip?: string;
}): Partial<PaperChoice> {
  const { paper, foundations, labels, slip } = values;
  return {
    ...(paper !== undefined && { paper: readPaper(paper) }),
    ...(foundations !== undefined && { foundation: readFoundation(foundations) }),
    ...(slip !== undefined && { slip: readSlip(slip) }),
    ...(labels !== undefined && { labels: readLabels(labels) }),
  };
}

function readPaper(text: string): PaperSize {
  if (text === 'a4' || text === 'letter') {
    return text;
  }
  throw new UsageFault(`--paper: expected a4 or letter; found "${text}"`);
}

function readSlip(text: string): SlipChoice {
  if (text === 'page' || text === 'narrow') {
    return text;
  }
  throw new UsageFault(`--slip: expected page or narrow; found "${text}"`);
}

function readLabels(text: string): PaperChoice['labels'] {
  const groups = /^(?<count>8|10|12)(?<unit>:unit)?$/.exec(text)?.groups;
  if (groups === undefined) {
    throw new UsageFault(`--labels: expected 8, 10 or 12, or 8:unit and so on; found "${text}"`);
  }
  return { perSheet: Number(groups.count) as LabelsPerSheet, by: groups.unit === undefined ? 'block' : 'unit' };
}

function readFoundation(text: string): FoundationPaper {
  const uses = Number(/^freezer:(\d+)$/.exec(text)?.[1]);
  if (text === 'sewn') {
    return { kind: 'sewn' };
  }
  if (uses >= FREEZER_USES.least && uses <= FREEZER_USES.most) {
    return { kind: 'freezer', uses };
  }
  throw new UsageFault(`--foundations: expected sewn, or freezer:3 to freezer:8; found "${text}"`);
}

function readHave(text: string): HaveArgument {
  const at = text.lastIndexOf('=');
  const [cloth, length] = [text.slice(0, Math.max(0, at)).trim(), text.slice(at + 1).trim()];
  if (cloth === '' || length === '') {
    throw new UsageFault(`--have: expected CLOTH=LENGTH, such as "noon-gold=1 1/4 yd"; found "${text}"`);
  }
  return { cloth, length };
}

function parse(words: readonly string[]) {
  try {
    return parseArgs({
      args: [...words],
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        out: { type: 'string' },
        seconds: { type: 'string' },
        compare: { type: 'boolean' },
        stacks: { type: 'boolean' },
        have: { type: 'string', multiple: true },
        paper: { type: 'string' },
        foundations: { type: 'string' },
        labels: { type: 'string' },
        slip: { type: 'string' },
        schema: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    });
  } catch (error) {
    throw new UsageFault(error instanceof Error ? error.message : String(error));
  }
}
