/** From a quilt to all that must be cut: start reading this folder here, or in README.md. */
import type { ClothChoice, JobBlank, LayoutJob } from '../plan/layout-job.ts';
import { formatLength } from '../quilt/format-length.ts';
import { lengthIn } from '../quilt/measure.ts';
import type { Quilt } from '../quilt/quilt.ts';
import { type ClothSupply, costBy, suppliesOf, unwashedProblems } from './cloth-lengths.ts';
import type { Blank, CutList, Group, Problem } from './cut-list.ts';
import { extentsOf, fits } from './fits.ts';
import { groupCloths } from './group-cloths.ts';
import { type Kind, kindOf, mergeKinds } from './kind.ts';
import { nameBlanks } from './name-blanks.ts';
import { oneClothOf } from './one-cloth.ts';
import { planJoined } from './plan-joined.ts';
import type { PlannedBlank } from './planned-blank.ts';
import { type RoughPatch, roughPatch } from './rough-patch.ts';
import { forgottenCloths, schemeCloths } from './scheme-cloths.ts';
import { roundUp } from './slant.ts';
import { gatherWanted, type WantedUses } from './wanted.ts';

/**
 * Everything one scheme asks to be cut. Lengths come out in the quilt's unit.
 * @param quilt as read by read-quilt.ts, so that lengths are known to be readable
 * @param schemeId default: the scheme that the quilt names
 * @returns what can be planned, and a problem for each thing that cannot or that she should know; it does not throw for those
 */
export function makeCutList(quilt: Quilt, schemeId: string = quilt.scheme): CutList {
  const scheme = quilt.schemes.find((each) => each.id === schemeId);
  if (scheme === undefined) {
    const text = `The quilt has no scheme “${schemeId}”; choose one of ${quilt.schemes.map((each) => `“${each.id}”`).join(', ')}.`;
    return { groups: [], problems: [{ kind: 'error', text }] };
  }
  const problems: Problem[] = [];
  const clothsOf = schemeCloths(quilt, scheme, problems);
  const gathered = gatherWanted(quilt, clothsOf);
  problems.push(...gathered.problems);
  const kinds = mergeKinds(gathered.wanted.flatMap(kindMaker(problems)));
  const names = nameBlanks(quilt, kinds);
  const planned = [
    ...kinds.map((kind, i) => planKind(kind, names[i]!)),
    ...planJoined(quilt, clothsOf, names, problems),
  ];
  const groups = groupCloths(
    quilt.cloths.map((cloth) => cloth.id),
    planned.map(({ cloths }) => cloths.map((cloth) => cloth.id)),
  ).map((ids) => makeGroup(quilt, ids, planned, problems));
  problems.push(...forgottenCloths(quilt));
  return { groups, problems: withoutRepeats(problems) };
}

/** Works each outline out once, however many kinds of blank its repeats need. */
function kindMaker(problems: Problem[]): (wanted: WantedUses) => readonly Kind[] {
  const known = new Map<string, RoughPatch>();
  return ({ wanted, uses }) => {
    const rough = known.get(wanted.outlineKey) ?? roughPatch(wanted.outline, wanted.making);
    known.set(wanted.outlineKey, rough);
    try {
      return [kindOf(wanted, rough, uses)];
    } catch (error) {
      const { unit, patch } = uses[0]!;
      problems.push({
        kind: 'error',
        text: `${unit}${patch} is left out, because ${(error as Error).message}.`,
        role: wanted.role.id,
      });
      return [];
    }
  };
}

function planKind(kind: Kind, id: string): PlannedBlank {
  const blank: Blank = {
    id,
    role: kind.role.id,
    demand: kind.uses.reduce((sum, use) => sum + use.count, 0) + kind.spares,
    spares: kind.spares,
    shapes: kind.shapes,
    patch: kind.patch,
    finishedArea: kind.finishedArea,
    sewnArea: kind.sewnArea,
    uses: kind.uses,
    directional: kind.directional,
    joined: null,
  };
  return { blank, cloths: kind.cloths, turns: kind.turns, turnOver: kind.turnOver };
}

function makeGroup(quilt: Quilt, ids: readonly string[], planned: readonly PlannedBlank[], problems: Problem[]): Group {
  const cloths = quilt.cloths.filter((cloth) => ids.includes(cloth.id));
  const by = costBy(cloths);
  const supplies = new Map(cloths.map((cloth) => [cloth.id, suppliesOf(quilt, cloth, by)]));
  const mine = planned.filter((each) => each.cloths.some((cloth) => ids.includes(cloth.id)));
  problems.push(...cloths.flatMap(unwashedProblems));
  for (const each of mine) {
    problems.push(...tooLarge(quilt, each, supplies));
  }
  const all = [...supplies.values()].flat();
  const oneCloth = oneClothOf(
    quilt,
    mine,
    all.map((supply) => supply.length),
  );
  if (quilt.stacks && oneCloth.length > 0) problems.push(noStacks(ids, quilt));
  const job: LayoutJob = {
    method: 'strips',
    stages: quilt.stacks && oneCloth.length === 0 ? 3 : 2,
    ruler: lengthIn(quilt.unit, quilt.ruler),
    seconds: 10,
    seed: 1,
    cloths: all.map((supply) => supply.job),
    blanks: mine.map((each) => jobBlank(each, supplies)),
    ...(oneCloth.length > 0 && { oneCloth }),
  };
  return {
    id: ids.join('+'),
    cloths: ids,
    job,
    blanks: mine.map(({ blank }) => blank),
    lengths: all.map((supply) => supply.length),
  };
}

const noStacks = (ids: readonly string[], quilt: Quilt): Problem => ({
  kind: 'warning',
  text: `${ids.map((id) => `“${quilt.cloths.find((cloth) => cloth.id === id)?.name ?? id}”`).join(' and ')}: no stacks where each block keeps to one cloth.`,
});

/** The first cloth's turns stand with the shapes; a cloth that asks for others says so itself. */
function jobBlank(
  { blank, cloths, turns, turnOver }: PlannedBlank,
  supplies: ReadonlyMap<string, readonly ClothSupply[]>,
): JobBlank {
  const common = { turns: turns[0]!, mirror: turnOver[0]! };
  const choices = cloths.flatMap((cloth, i) =>
    supplies.get(cloth.id)!.map(({ job }): ClothChoice => {
      const own = { turns: turns[i]!, mirror: turnOver[i]! };
      return JSON.stringify(own) === JSON.stringify(common) ? job.id : { id: job.id, ...own };
    }),
  );
  return {
    id: blank.id,
    demand: blank.demand,
    shapes: blank.shapes.map(({ outline }) => ({ outline, ...common })),
    cloths: choices,
  };
}

/** A blank that fits none of its cloths stays in the job, where the plan leaves it unplaced; here it is told why. */
function tooLarge(
  quilt: Quilt,
  { blank, cloths, turns }: PlannedBlank,
  supplies: ReadonlyMap<string, readonly ClothSupply[]>,
): readonly Problem[] {
  const ways = cloths.flatMap((cloth, i) =>
    blank.shapes.flatMap((shape) => extentsOf(shape.outline, turns[i]!).map((extent) => ({ cloth, extent }))),
  );
  const fitting = ways.some(({ cloth, extent }) => supplies.get(cloth.id)!.some(({ job }) => fits(extent, job)));
  if (fitting) {
    return [];
  }
  const ruler = lengthIn(quilt.unit, quilt.ruler);
  const say = (value: number) => formatLength(roundUp(value / ruler) * ruler, quilt.unit);
  const needed = ways.reduce((least, way) => (way.extent.width < least.extent.width ? way : least));
  const widest = Math.max(...supplies.get(needed.cloth.id)!.map(({ job }) => job.width), 0);
  const beside = needed.extent.width > widest ? '' : `, and ${say(needed.extent.length)} long`;
  return [
    {
      kind: 'error',
      text: `${blank.id} does not fit on “${needed.cloth.name}”: it needs cloth ${say(needed.extent.width)} wide${beside}, and the widest there is has ${formatLength(widest, quilt.unit)}.`,
      role: blank.role,
      cloth: needed.cloth.id,
      blank: blank.id,
    },
  ];
}

function withoutRepeats(problems: readonly Problem[]): readonly Problem[] {
  return [...new Map(problems.map((problem) => [problem.text, problem])).values()];
}
