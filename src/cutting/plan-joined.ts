/** Binding, sashing, borders and backing as blanks; no spares are added to them. */
import type { Turns } from '../plan/layout-job.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Cloth, JoinedLength, Quilt } from '../quilt/quilt.ts';
import { followed } from '../quilt/quilt-size.ts';
import { polygonArea } from '../shape/polygon.ts';
import { suppliesOf } from './cloth-lengths.ts';
import type { Problem } from './cut-list.ts';
import { type JoinedPiece, joinedStrips, onRuler, rectangle } from './joined-strips.ts';
import { bestPanels, type PanelWay } from './panels.ts';
import type { PlannedBlank } from './planned-blank.ts';
import { isDirectional } from './turn-sets.ts';

/** All pieces lie as they are told, x across the cloth: joined pieces share one grain. */
const TURNS: Turns = [0];

/** @param taken names of other blanks, which these must not bear */
export function planJoined(
  quilt: Quilt,
  clothsOf: (role: string) => readonly Cloth[],
  taken: readonly string[],
  problems: Problem[],
): readonly PlannedBlank[] {
  return quilt.joined.flatMap((asWritten) => {
    const joined = followed(quilt, asWritten);
    const cloths = clothsOf(joined.role);
    if (cloths.length === 0) {
      return [];
    }
    const pieces = piecesOf(quilt, joined, cloths);
    if (typeof pieces === 'string') {
      problems.push({ kind: 'error', text: `“${joined.name}” cannot be joined up: ${pieces}.`, role: joined.role });
      return [];
    }
    const name = taken.includes(joined.name) || joined.name === '' ? joined.id : joined.name;
    const directional = facesUp(quilt, joined, cloths);
    return pieces.map((piece) => plannedPiece(joined, name, piece, cloths, directional));
  });
}

function plannedPiece(
  joined: JoinedLength,
  name: string,
  { last, count, outline }: JoinedPiece,
  cloths: readonly Cloth[],
  directional: boolean,
): PlannedBlank {
  const area = polygonArea(outline);
  return {
    blank: {
      id: last ? `${name}, last` : name,
      role: joined.role,
      demand: count,
      spares: 0,
      shapes: [{ kind: 'strip', outline }],
      patch: outline,
      finishedArea: area,
      sewnArea: area,
      uses: [],
      directional,
      joined: joined.id,
    },
    cloths,
    turns: cloths.map(() => TURNS),
    turnOver: cloths.map(() => false),
  };
}

/** The pieces as they are cut from the narrowest of the cloths that may serve; or what is wrong, in words. */
function piecesOf(quilt: Quilt, joined: JoinedLength, cloths: readonly Cloth[]): readonly JoinedPiece[] | string {
  const supplies = cloths.flatMap((cloth) => suppliesOf(quilt, cloth, 'length'));
  const bolts = supplies.filter(({ length }) => length.piece === null);
  const serving = (bolts.length > 0 ? bolts : supplies).map(({ job }) => job);
  const narrowest = serving.reduce((least, job) => (job.width < least.width ? job : least), serving[0]!);
  if (narrowest === undefined) {
    return 'there is no cloth to cut';
  }
  const inUnit = (length: JoinedLength['length'] | undefined) =>
    length === undefined ? null : lengthIn(quilt.unit, length);
  const [total, width, join] = [inUnit(joined.length)!, inUnit(joined.width)!, inUnit(joined.join)!];
  const ruler = lengthIn(quilt.unit, quilt.ruler);
  const common = { join, clothWidth: narrowest.width };
  if (joined.kind !== 'panels') {
    const strips = joinedStrips({ ...common, total, width, shortest: inUnit(joined.shortest), ruler });
    return strips ?? 'each join takes as much as a whole strip has';
  }
  const over = 2 * (inUnit(joined.overhang) ?? 0);
  const ways = panelWays(quilt, joined, cloths);
  if (ways.length === 0) {
    return 'the prints of its cloths run different ways, so no panel can be cut from either; choose one cloth';
  }
  const wanted = { ...common, width: width + over, length: total + over, step: narrowest.step ?? null };
  const panels = bestPanels(ways, wanted);
  if (panels === null) {
    return 'each seam takes as much as a whole panel has';
  }
  const { whole, narrow, length } = panels;
  const tall = onRuler(length, ruler);
  const wide = narrow === null ? null : Math.min(narrowest.width, onRuler(narrow, ruler));
  return [
    ...(whole === 0 ? [] : [{ last: false, count: whole, outline: rectangle(narrowest.width, tall) }]),
    ...(wide === null ? [] : [{ last: whole > 0, count: 1, outline: rectangle(wide, tall) }]),
  ];
}

/** Whether a panel's print is to stand upright in the quilt; strips are cut across the cloth whatever their print. */
function facesUp(quilt: Quilt, joined: JoinedLength, cloths: readonly Cloth[]): boolean {
  const facing = quilt.roles.find((role) => role.id === joined.role)?.facing;
  return joined.kind === 'panels' && facing?.to !== 'free' && cloths.some(minds);
}

const minds = (cloth: Cloth): boolean => isDirectional(cloth) && cloth.print !== 'check';

/** A print whose up runs along the cloth stands upright only in panels that run up the quilt; one across, only in the others. */
function panelWays(quilt: Quilt, joined: JoinedLength, cloths: readonly Cloth[]): readonly PanelWay[] {
  if (!facesUp(quilt, joined, cloths)) {
    return ['up', 'across'];
  }
  const ways: readonly PanelWay[] = cloths.filter(minds).map((cloth) => (cloth.up === 'across' ? 'across' : 'up'));
  return new Set(ways).size === 1 ? ways.slice(0, 1) : [];
}
