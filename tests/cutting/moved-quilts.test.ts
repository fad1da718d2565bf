/** The same quilt told otherwise must be cut the same: turned, mirrored, scaled, in centimetres for inches. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { CutList } from '../../src/cutting/cut-list.ts';
import { makeCutList } from '../../src/cutting/make-cut-list.ts';
import type { Cloth, Facing, Length, Quilt, Unit } from '../../src/quilt/quilt.ts';
import { unitsOf } from '../../src/quilt/units-of.ts';
import { isArc, mirrorOutline, type Outline } from '../../src/shape/outline.ts';
import { scale, turn } from '../../src/shape/point.ts';
import { mirrorPolygon, polygonArea, polygonBox, turnPolygon } from '../../src/shape/polygon.ts';
import { samePlace, toOrigin } from '../../src/shape/same-outline.ts';

const read = (name: string): Quilt =>
  JSON.parse(readFileSync(new URL(`../../scenarios/${name}.yardwright.json`, import.meta.url), 'utf8'));
const quilts = ['solstice-dial', 'garden-gate'].map((name) => listed(read(name)));

/** With its units listed, so that they can be moved. */
function listed(quilt: Quilt): Quilt {
  return {
    ...quilt,
    blocks: quilt.blocks.map(({ form: _, ...block }, i) => ({
      ...block,
      units: unitsOf(quilt.blocks[i]!, quilt.unit),
    })),
  };
}

function withUnits(quilt: Quilt, change: (unit: Unit) => Unit): Quilt {
  return { ...quilt, blocks: quilt.blocks.map((block) => ({ ...block, units: block.units!.map(change) })) };
}

/** What is cut, without names: for each cloth its blanks' areas, boxes, demands and turns. */
function gist(list: CutList, size = 1) {
  const near = (value: number) => Math.round(value * 1e6) / 1e6;
  return list.groups.map(({ id, job, blanks }) => ({
    id,
    blanks: blanks
      .map((blank, i) => ({
        demand: blank.demand,
        finished: near(blank.finishedArea / size ** 2),
        sewn: near(blank.sewnArea / size ** 2),
        turns: JSON.stringify(job.blanks[i]!.shapes!.map((shape) => shape.turns)),
        shapes: blank.shapes.map(({ kind, outline }) => `${kind} ${near(polygonArea(outline) / size ** 2)}`),
      }))
      .sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1)),
  }));
}

test.each(quilts)('the block turned in the quilt: $name', (quilt) => {
  const turned = { ...quilt, blocks: quilt.blocks.map((block) => ({ ...block, turns: [33] })) };
  const facesWithin = quilt.roles.every(({ facing }) => facing.to !== 'upright');
  if (facesWithin) {
    expect(gist(makeCutList(turned))).toEqual(gist(makeCutList(quilt)));
  } else {
    // What stands upright turns against the block, so the other way about the quilt is the same.
    expect(gist(makeCutList(turned))).not.toEqual(gist(makeCutList(quilt)));
  }
});

test.each(quilts)('units drawn a quarter further round and repeated from a quarter less: $name', (quilt) => {
  const moved = withUnits(quilt, (unit) => ({
    ...unit,
    ...(unit.axis === undefined ? {} : { axis: unit.axis + 90 }),
    repeat: { ...unit.repeat, from: (unit.repeat.from ?? 0) - 90 },
    patches: unit.patches.map((patch) => ({ ...patch, outline: turned90(patch.outline) })),
  }));
  const unmirrored = quilt.blocks.every((block) =>
    block.units!.every((unit) => (unit.repeat.mirrored ?? 'no') === 'no'),
  );
  const list = makeCutList(moved);
  if (unmirrored) {
    expect(gist(list)).toEqual(gist(makeCutList(quilt)));
  } else {
    // A mirrored unit is reflected before it is turned, so drawn elsewhere it stands elsewhere; its blanks are no others.
    const counts = (of: CutList) => of.groups.flatMap((group) => group.blanks.map((blank) => blank.demand)).sort();
    expect(counts(list)).toEqual(counts(makeCutList(quilt)));
  }
});

const turned90 = (outline: Outline): Outline => outline.map((entry) => (isArc(entry) ? entry : turn(entry, 90)));

test.each(quilts)('the whole quilt mirrored: every blank is the mirror image of one before: $name', (quilt) => {
  const across: Partial<Record<Facing['to'], Facing['to']>> = {
    clockwise: 'anticlockwise',
    anticlockwise: 'clockwise',
  };
  const mirrored: Quilt = {
    ...withUnits(quilt, (unit) => ({
      ...unit,
      ...(unit.axis === undefined ? {} : { axis: -unit.axis }),
      repeat: { ...unit.repeat, from: -(unit.repeat.from ?? 0), over: -(unit.repeat.over ?? 360) },
      patches: unit.patches.map((patch) => ({ ...patch, outline: mirrorOutline(patch.outline) })),
    })),
    roles: quilt.roles.map((role) => ({
      ...role,
      facing: { ...role.facing, to: across[role.facing.to] ?? role.facing.to },
    })),
  };
  const before = makeCutList(quilt);
  const after = makeCutList(mirrored);
  expect(gist(after)).toEqual(gist(before));
  after.groups.forEach((group, g) => {
    group.blanks.forEach(({ directional, shapes }, i) => {
      const turns = group.job.blanks[i]!.shapes![0]!.turns;
      const known = before.groups[g]!.blanks.flatMap((blank) => blank.shapes.map(({ outline }) => toOrigin(outline)));
      for (const { outline } of directional ? shapes : []) {
        // A two-way blank may be told half a turn about.
        const images = [
          mirrorPolygon(outline),
          ...(turns?.length === 2 ? [turnPolygon(mirrorPolygon(outline), 180)] : []),
        ];
        expect(images.some((image) => known.some((each) => samePlace(each, toOrigin(image))))).toBe(true);
      }
    });
  });
});

test.each(quilts)('the whole quilt twice as large, ruler and all: $name', (quilt) => {
  const twice = (length: Length): Length =>
    typeof length === 'number'
      ? 2 * length
      : length.replace(/^(\d+)(?:\s+(\d+)\/(\d+)|\/(\d+))?/, (_, a, b, c, d) => doubled(a, b, c, d));
  const doubled = (a: string, b?: string, c?: string, d?: string): string =>
    `${2 * (d !== undefined ? Number(a) / Number(d) : Number(a) + (b === undefined ? 0 : Number(b) / Number(c)))}`;
  const cloths = quilt.cloths.map(
    (cloth): Cloth => ({
      ...cloth,
      width: twice(cloth.width),
      ...(cloth.step === undefined ? {} : { step: twice(cloth.step) }),
      ...(cloth.pieces === undefined
        ? {}
        : {
            pieces: cloth.pieces.map((piece) => ({ ...piece, width: twice(piece.width), length: twice(piece.length) })),
          }),
    }),
  );
  const large: Quilt = {
    ...withUnits(quilt, (unit) => ({
      ...unit,
      patches: unit.patches.map((patch) => ({ ...patch, outline: twiceOutline(patch.outline) })),
    })),
    cloths,
    allowance: twice(quilt.allowance),
    room: twice(quilt.room),
    ruler: twice(quilt.ruler),
    squaring: twice(quilt.squaring),
    joined: quilt.joined.map((each) => ({
      ...each,
      length: twice(each.length),
      width: twice(each.width),
      join: twice(each.join),
    })),
  };
  expect(gist(makeCutList(large), 2)).toEqual(gist(makeCutList(quilt)));
  const widths = (list: CutList) => list.groups.flatMap((group) => group.job.cloths.map(({ width }) => width));
  widths(makeCutList(large)).forEach((width, i) => {
    expect(width).toBeCloseTo(2 * widths(makeCutList(quilt))[i]!, 9);
  });
});

function twiceOutline(outline: Outline): Outline {
  return outline.map((entry) =>
    isArc(entry) ? { arc: { ...entry.arc, radius: 2 * entry.arc.radius } } : scale(entry, 2),
  );
}

test('inches told in centimetres: the same blanks, 2.54 times as large', () => {
  const inches = listed(read('solstice-dial'));
  const size = 2.54;
  const written = (length: Length): Length => (typeof length === 'number' ? `${length} in` : length);
  const metric: Quilt = {
    ...withUnits(inches, (unit) => ({
      ...unit,
      patches: unit.patches.map((patch) => ({
        ...patch,
        outline: patch.outline.map((entry) =>
          isArc(entry) ? { arc: { ...entry.arc, radius: size * entry.arc.radius } } : scale(entry, size),
        ),
      })),
    })),
    unit: 'cm',
    allowance: written(inches.allowance),
    room: written(inches.room),
    ruler: written(inches.ruler),
    squaring: written(inches.squaring),
    cloths: inches.cloths.map((cloth) => ({ ...cloth, width: written(cloth.width) })),
  };
  const before = makeCutList(inches);
  const after = makeCutList(metric);
  expect(gist(after, size)).toEqual(gist(before));
  after.groups.forEach((group, g) => {
    group.job.cloths.forEach((cloth, c) => {
      const same = before.groups[g]!.job.cloths[c]!;
      expect(cloth.width).toBeCloseTo(size * same.width, 9);
      // The price of a step does not depend on the unit.
      if (cloth.step !== undefined) {
        expect(cloth.step * cloth.cost!).toBeCloseTo(same.step! * same.cost!, 9);
      }
    });
  });
});

test('boxes are whole rulers each way', () => {
  for (const quilt of quilts) {
    const ruler = quilt.unit === 'in' ? 0.125 : 0.5;
    for (const { outline, kind } of makeCutList(quilt).groups.flatMap((group) =>
      group.blanks.flatMap(({ shapes }) => shapes),
    )) {
      const { max } = polygonBox(outline);
      if (kind === 'box') {
        expect(Math.abs(max[0] / ruler - Math.round(max[0] / ruler))).toBeLessThan(1e-6);
        expect(Math.abs(max[1] / ruler - Math.round(max[1] / ruler))).toBeLessThan(1e-6);
      }
    }
  }
});
