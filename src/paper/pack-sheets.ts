/** Pieces of paper on as few sheets as the packing engine finds: each sheet is to it a piece of cloth, portrait or landscape. */
import { type Box, type Placing, rectangle } from '../draw/display-list.ts';
import type { PlanJob } from '../plan/answerer.ts';
import type { JobBlank, LayoutJob, TurnRange } from '../plan/layout-job.ts';
import { modulo, type Polygon, turn } from '../shape/point.ts';
import { boxHeight, boxWidth, polygonBox, turnPolygon } from '../shape/polygon.ts';
import { freeGauges, freeNotes } from './free-gauges.ts';
import type { Orientation, PaperSize } from './paper-size.ts';
import type { PaperPiece } from './pieces.ts';
import { bandArea, CM_BOX, fullArea, type Gauges, INCH_BOX } from './sheet-frame.ts';
import { sheetOutline, sheetTurns } from './sheet-outline.ts';

/** A sheet with whole pieces on it. */
export interface PackedSheet {
  readonly orientation: Orientation;
  readonly placed: readonly PlacedPiece[];
  /** Where the boxes stand among the pieces; null: in the foot. */
  readonly gauges: Gauges | null;
  /** And the words that else stand there, where there is room for them. */
  readonly notesAt?: Box | null;
}

export interface PlacedPiece {
  readonly piece: PaperPiece;
  /** From the piece's frame to the sheet, without a scale. */
  readonly placing: Required<Pick<Placing, 'turn' | 'by'>>;
}

export interface Packed {
  readonly sheets: readonly PackedSheet[];
  /** Larger than a sheet however they are turned. */
  readonly tooLarge: readonly PaperPiece[];
}

const ORIENTATIONS: readonly Orientation[] = ['portrait', 'landscape'];
/** Wall time for one packing. */
const SECONDS = 3;
/** Turns tried for a piece that only just fits. */
const STEP = 1;
const MOST_TURNS = 6;

/** All copies of all pieces. Those that need the whole of a sheet are packed apart, with the boxes among them. */
export async function packSheets(pieces: readonly PaperPiece[], paper: PaperSize, plan: PlanJob): Promise<Packed> {
  const sized = pieces
    .filter(({ copies }) => copies > 0)
    .map((piece) => ({ piece, outline: sheetOutline(piece.trim) }));
  const band: Wanted[] = [];
  const full: Wanted[] = [];
  const tooLarge: PaperPiece[] = [];
  for (const { piece, outline } of sized) {
    const turns = fitting(outline, sheetTurns(outline), areas(paper, bandArea));
    const fullTurns =
      turns.length > 0 ? [] : fitting(outline, [...sheetTurns(outline), ...everyTurn()], areas(paper, fullArea));
    if (turns.length > 0) band.push({ piece, outline, turns });
    else if (fullTurns.length > 0) full.push({ piece, outline, turns: fullTurns.slice(0, MOST_TURNS) });
    else tooLarge.push(piece);
  }
  const banded = await pack(band, paper, bandArea, plan);
  const filled = await packFull(full, paper, plan);
  return { sheets: [...banded, ...filled.sheets], tooLarge: [...tooLarge, ...filled.tooLarge] };
}

interface Wanted {
  readonly piece: PaperPiece;
  readonly outline: Polygon;
  readonly turns: readonly number[];
}

type AreaOf = typeof bandArea;

const areas = (paper: PaperSize, areaOf: AreaOf): readonly Box[] => ORIENTATIONS.map((each) => areaOf(paper, each));
const everyTurn = (): readonly number[] => Array.from({ length: 360 / STEP }, (_, i) => i * STEP);

function fitting(outline: Polygon, turns: readonly number[], areas: readonly Box[]): readonly number[] {
  return turns.filter((degrees) => {
    const box = polygonBox(turnPolygon(outline, degrees));
    return areas.some(({ width, height }) => boxWidth(box) <= width + 1e-9 && boxHeight(box) <= height + 1e-9);
  });
}

async function pack(
  wanted: readonly Wanted[],
  paper: PaperSize,
  areaOf: AreaOf,
  plan: PlanJob,
): Promise<readonly PackedSheet[]> {
  if (wanted.length === 0) return [];
  const job: LayoutJob = {
    method: 'strips',
    stages: 2,
    seconds: SECONDS,
    seed: 1,
    cloths: ORIENTATIONS.map((id) => {
      const { width, height } = areaOf(paper, id);
      return { id, width, length: height, count: null, cost: 1, firstCut: 'either' };
    }),
    blanks: wanted.map(({ piece, outline, turns }, i): JobBlank => {
      return { id: `${i}`, demand: piece.copies, outline, turns: turns as readonly TurnRange[] };
    }),
  };
  const { layouts, unplaced } = await plan(job);
  const sheets = layouts.flatMap(({ cloth, count, placements }) => {
    const orientation = cloth as Orientation;
    const area = areaOf(paper, orientation);
    const placed = placements.map(({ blank, turn: degrees, x, y }) => ({
      piece: wanted[Number(blank)]!.piece,
      placing: { turn: degrees, by: [area.left + x, area.bottom + y] as const },
    }));
    const sheet = { orientation, placed, gauges: null };
    return Array.from({ length: count }, (): PackedSheet => sheet);
  });
  const alone = unplaced.flatMap(({ blank, count }) =>
    Array.from({ length: count }, () => singleSheet(wanted[Number(blank)]!, paper, areaOf)),
  );
  const first = ({ placed }: PackedSheet): number =>
    Math.min(...placed.map(({ piece }) => wanted.findIndex((each) => each.piece === piece)));
  return [...sheets, ...alone].sort((a, b) => first(a) - first(b));
}

/** One piece in the middle of a sheet. */
function singleSheet({ piece, outline, turns }: Wanted, paper: PaperSize, areaOf: AreaOf): PackedSheet {
  for (const degrees of turns) {
    for (const orientation of ORIENTATIONS) {
      const area = areaOf(paper, orientation);
      const { min, max } = polygonBox(outline.map((point) => turn(point, degrees)));
      if (max[0] - min[0] <= area.width + 1e-9 && max[1] - min[1] <= area.height + 1e-9) {
        const by = [
          area.left + (area.width - max[0] - min[0]) / 2,
          area.bottom + (area.height - max[1] - min[1]) / 2,
        ] as const;
        return { orientation, placed: [{ piece, placing: { turn: modulo(degrees, 360), by } }], gauges: null };
      }
    }
  }
  throw new Error(`${piece.name} fits no sheet, though it was taken to`);
}

/** Packed over whole sheets; where the boxes then find no room, a sheet each; where even that has none, left to be parted. */
async function packFull(
  wanted: readonly Wanted[],
  paper: PaperSize,
  plan: PlanJob,
): Promise<{ readonly sheets: readonly PackedSheet[]; readonly tooLarge: readonly PaperPiece[] }> {
  const alone = wanted.map((each) => ({ each, sheet: aloneWithGauges(each, paper) }));
  const fitted = alone.filter(({ sheet }) => sheet !== null);
  const tooLarge = alone.filter(({ sheet }) => sheet === null).map(({ each }) => each.piece);
  const packed = await pack(
    fitted.map(({ each }) => each),
    paper,
    fullArea,
    plan,
  );
  const sheets = packed.flatMap((sheet) => {
    const filled = withGauges(sheet, paper);
    return filled !== null
      ? [filled]
      : sheet.placed.map(({ piece }) => fitted.find(({ each }) => each.piece === piece)!.sheet!);
  });
  return { sheets, tooLarge };
}

/** Turned about until the boxes have room too. */
function aloneWithGauges(wanted: Wanted, paper: PaperSize): PackedSheet | null {
  for (const degrees of wanted.turns) {
    const sheet = withGauges(singleSheet({ ...wanted, turns: [degrees] }, paper, fullArea), paper);
    if (sheet !== null) return sheet;
  }
  return null;
}

function withGauges(sheet: PackedSheet, paper: PaperSize): PackedSheet | null {
  const area = fullArea(paper, sheet.orientation);
  const taken = trims(sheet);
  const gauges = freeGauges(area, taken);
  if (gauges === null) return null;
  const boxes = [
    rectangle(gauges.inch[0], gauges.inch[1], INCH_BOX, INCH_BOX),
    rectangle(gauges.cm[0], gauges.cm[1], CM_BOX, CM_BOX),
  ];
  return { ...sheet, gauges, notesAt: freeNotes(area, [...taken, ...boxes]) };
}

const trims = ({ placed }: PackedSheet): readonly Polygon[] =>
  placed.map(({ piece, placing }) =>
    piece.trim.map((point) => {
      const [x, y] = turn(point, placing.turn);
      return [x + placing.by[0], y + placing.by[1]];
    }),
  );
