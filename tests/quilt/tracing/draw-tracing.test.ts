import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TRACE_SEWING } from '../../../src/page/trace/trace-sewing.ts';
import type { Unit } from '../../../src/quilt/quilt.ts';
import { timesAlike } from '../../../src/quilt/tracing/alike-copies.ts';
import { type DrawnTracing, drawTracing, type TracingOptions } from '../../../src/quilt/tracing/draw-tracing.ts';
import { centreOfArcs, centreOfCopies } from '../../../src/quilt/tracing/find-centre.ts';
import { describePatch, describeUnit } from '../../../src/quilt/tracing/mend-lines.ts';
import { EMPTY_TRACING, type Tracing } from '../../../src/quilt/tracing/tracing.ts';
import { unitsOf as unitsOfBlock } from '../../../src/quilt/units-of.ts';
import { arcOf, onArc } from '../../../src/shape/arc.ts';
import { cornersOf, edgesOf, isArc, moveOutline, type Outline } from '../../../src/shape/outline.ts';
import { outlineArea } from '../../../src/shape/outline-measures.ts';
import { add, distance, type Point, turn } from '../../../src/shape/point.ts';
import { bendFrom, clickRound, polar, traceRing } from './trace-clicks.ts';

const OPTIONS: TracingOptions = { name: 'Traced', known: [], within: 0.1 };

function unitsOf(drawn: DrawnTracing): readonly Unit[] {
  if ('faults' in drawn) throw new Error(drawn.faults.join(' '));
  return drawn.block.units;
}

const corners = (outline: Outline): readonly Point[] => outline.filter((entry) => !isArc(entry)) as Point[];

/** FACTS.md, rings (derived): area of a wedge of 20 from 2 to 8 is 9.4248, of 12 from 3 to 6 7.0686. */
const RINGS = [
  { count: 20, inner: 2, outer: 8, area: 9.4248 },
  { count: 12, inner: 3, outer: 6, area: 7.0686 },
] as const;

describe('a ring', () => {
  test.each(RINGS)('of $count wedges is one wedge and its copies', ({ area, ...ring }) => {
    const centre: Point = [11, -3];
    const wedge: Tracing = { ...traceRing({ ...ring, traced: 1 }, centre), centre };
    const [unit] = unitsOf(drawTracing(describeUnit(wedge, 'A', { count: ring.count }), OPTIONS));
    expect(unit!.repeat).toEqual({ count: ring.count });
    const { outline } = unit!.patches[0]!;
    expect(outlineArea(outline)).toBeCloseTo(area, 4);
    const radii = outline.flatMap((entry) => (isArc(entry) ? [entry.arc.radius] : []));
    expect(radii.sort((a, b) => a - b)).toEqual([ring.inner, ring.outer].map((radius) => expect.closeTo(radius, 5)));
  });

  test('traced whole with a shaky hand is the mean of its wedges, which meet exactly', () => {
    const slips = fc.tuple(
      fc.double({ min: -0.02, max: 0.02, noNaN: true }),
      fc.double({ min: -0.02, max: 0.02, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(slips, { minLength: 80, maxLength: 80 }), (list) => {
        let next = 0;
        const slip = (): Point => list[next++ % list.length]!;
        const ring = { count: 12, inner: 3, outer: 6 };
        const whole: Tracing = { ...traceRing({ ...ring, traced: 12 }, [1, 2], slip), centre: [1, 2] };
        const drawn = drawTracing(describeUnit(whole, 'A', { count: 12 }), OPTIONS);
        const [unit] = unitsOf(drawn);
        expect(unit!.patches).toHaveLength(1);
        const got = corners(unit!.patches[0]!.outline);
        const wanted = [polar(3, 0), polar(6, 0), polar(6, 30), polar(3, 30)];
        for (const [i, corner] of got.entries()) {
          expect(distance(corner, wanted[i]!)).toBeLessThan(0.02);
        }
        // The left side is the right side turned by one step.
        expect(distance(polar(Math.hypot(...got[1]!), 30 + angleOf(got[1]!)), got[2]!)).toBeLessThan(1e-5);
      }),
      { numRuns: 15 },
    );
  });

  test('as units of one copy keeps every patch where it is', () => {
    const whole = { ...traceRing({ count: 8, inner: 3, outer: 6, traced: 8 }, [1, 2]), centre: [1, 2] as Point };
    const [unit] = unitsOf(drawTracing(whole, OPTIONS));
    expect(unit!.patches).toHaveLength(8);
    expect(unit!.repeat).toEqual({ count: 1 });
    const sum = unit!.patches.reduce((total, patch) => total + outlineArea(patch.outline), 0);
    expect(sum).toBeCloseTo(Math.PI * (36 - 9), 4);
  });

  test('traced whole is known to be alike, but not where roles take turns', () => {
    const whole = traceRing({ count: 8, inner: 3, outer: 6, traced: 8 }, [1, 2]);
    const times = (tracing: Tracing) => timesAlike(tracing, tracing.units[0]!, [1, 2], 0.1);
    expect(times(whole)).toBe(8);
    const turns = { ...whole, patches: whole.patches.map((patch, i) => ({ ...patch, role: `R${i % 2}` })) };
    expect(times(turns)).toBe(4);
    const odd = { ...whole, patches: whole.patches.map((patch, i) => ({ ...patch, role: i === 3 ? 'Odd' : 'R' })) };
    expect(times(odd)).toBeNull();
  });

  test('numbers typed by hand are kept, checked for doubles and for their sewing', () => {
    const square = clickRound(EMPTY_TRACING, [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ]);
    const row = clickRound(
      clickRound(square, [
        [1, 0],
        [2, 0],
        [2, 1],
        [1, 1],
      ]),
      [
        [2, 0],
        [3, 0],
        [3, 1],
        [2, 1],
      ],
    );
    const typed = (...numbers: readonly (number | null)[]) =>
      drawTracing(
        row.patches.reduce((rest, patch, i) => describePatch(rest, patch.id, { number: numbers[i]! }), row),
        { ...OPTIONS, sewing: TRACE_SEWING },
      );
    expect(unitsOf(typed(2, 1, 3))[0]!.patches.map((patch) => patch.number)).toEqual([1, 2, 3]);
    expect(unitsOf(typed(2, 1, 3))[0]!.paper).toBe(true);
    expect(typed(2, 2, 3)).toMatchObject({ faults: [expect.stringMatching(/numbered A2/)] });
    expect(typed(1, null, 3)).toMatchObject({ faults: [expect.stringMatching(/all patches/)] });
    expect(typed(1, 3, 2)).toMatchObject({ faults: [expect.stringMatching(/In the order you typed A2 shares no/)] });
    expect(unitsOf(typed(null, null, null))[0]!.paper).toBe(true);
  });

  test('without a centre, with too many copies, or with roles that differ between copies is told', () => {
    const wedge = traceRing({ count: 12, inner: 3, outer: 6, traced: 1 }, [0, 0]);
    const faults = (tracing: Tracing): string => {
      const drawn = drawTracing(tracing, OPTIONS);
      return 'faults' in drawn ? drawn.faults.join(' ') : '';
    };
    expect(faults(EMPTY_TRACING)).toMatch(/No patch/);
    expect(faults(describeUnit(wedge, 'A', { count: 12 }))).toMatch(/centre/);
    expect(faults({ ...describeUnit(wedge, 'A', { count: 20 }), centre: [0, 0] })).toMatch(/spans 30°, and has 18°/);
    const two = traceRing({ count: 12, inner: 3, outer: 6, traced: 2 }, [0, 0]);
    const roles = { ...two, patches: two.patches.map((patch, i) => ({ ...patch, role: `R${i}` })) };
    expect(faults({ ...describeUnit(roles, 'A', { count: 12 }), centre: [0, 0] })).toMatch(/roles differ/);
    expect(faults({ ...describeUnit(roles, 'A', { count: 6 }), centre: [0, 0] })).toBe('');
  });
});

describe('a compass star', () => {
  const form = { kind: 'compass-star', points: 16, inner: 1.8, outer: 6, ring: 7.5, wedges: 20, side: 17 } as const;
  const star = unitsOfBlock({ id: 'star', name: 'Star', count: 1, form }, 'in');
  const shaky = (seed: number): Point => [0.012 * Math.sin(seed * 91.7), 0.012 * Math.cos(seed * 57.3)];

  /** A unit clicked as it is printed, its arcs pulled, with a shaky hand. */
  function traceUnit(tracing: Tracing, unit: Unit, degrees: number): Tracing {
    return unit.patches.reduce((rest, patch, i) => {
      const printed = moveOutline(patch.outline, (corner) => turn(corner, degrees));
      const clicked = cornersOf(printed).map((corner, k) => add(corner, shaky(10 * i + k + degrees)));
      const drawn = clickRound(rest, clicked, unit.id, patch.role);
      return edgesOf(printed).reduce((bent, edge, k) => {
        const arc = arcOf(edge);
        return arc === null ? bent : bendFrom(bent, clicked[k]!, onArc(arc, arc.start + arc.sweep / 2));
      }, drawn);
    }, tracing);
  }

  test('traced by one long and one short point gives units that meet, in an order that can be sewn', () => {
    const [long, short] = star;
    const both = traceUnit(traceUnit(EMPTY_TRACING, long!, 0), short!, 22.5);
    const twice = ['A', 'B'].reduce<Tracing>((rest, id) => describeUnit(rest, id, { count: 8 }), {
      ...both,
      centre: [0, 0] as Point,
    });
    const units = unitsOf(drawTracing(twice, { ...OPTIONS, sewing: TRACE_SEWING }));
    expect(units.map(({ id, paper, patches }) => [id, paper, patches.length])).toEqual([
      ['A', true, 4],
      ['B', true, 4],
    ]);
    // Round the centre all areas add up to the circle's within what a hand may slip.
    const area = units.reduce(
      (sum, unit) => sum + 8 * unit.patches.reduce((all, { outline }) => all + outlineArea(outline), 0),
      0,
    );
    expect(Math.abs(area - Math.PI * 36) / (Math.PI * 36)).toBeLessThan(0.005);
    // The last corner of B on the circle is A's first, turned by one step: the two meet exactly.
    const onCircle = units.map((unit) =>
      unit.patches.flatMap(({ outline }) => corners(outline)).filter((corner) => Math.hypot(...corner) > 5.9),
    );
    for (const corner of onCircle[0]!.filter((each) => Math.abs(each[0]) > 0.5)) {
      const near = onCircle[1]!.flatMap((other) => [0, 45, -45].map((step) => distance(turn(other, step), corner)));
      expect(Math.min(...near)).toBeLessThan(2e-6);
    }
    for (const [i, unit] of [long!, short!].entries()) {
      for (const patch of unit.patches) {
        const true_ = outlineArea(patch.outline);
        const best = Math.min(...units[i]!.patches.map((each) => Math.abs(outlineArea(each.outline) - true_)));
        expect(best).toBeLessThan(0.15);
      }
    }
  });
});

test('half of a point, mirrored: its mirror stands upright and its long side is on it', () => {
  const places: readonly Point[] = [[0, 0], polar(3, 52.5), polar(8, 30)];
  const half: Tracing = { ...clickRound(EMPTY_TRACING, places), centre: [0, 0] };
  const [unit] = unitsOf(drawTracing(describeUnit(half, 'A', { count: 8, mirrored: 'also' }), OPTIONS));
  expect(unit!.repeat.from).toBeCloseTo(30, 3);
  expect(corners(unit!.patches[0]!.outline).some(([x, y]) => Math.abs(x) < 1e-4 && Math.abs(y - 8) < 1e-4)).toBe(true);
});

test('a quilt’s role of that name is taken, a new one gets an id that none has', () => {
  const known = [
    { id: 'hours', name: 'Hours', facing: { to: 'clockwise' as const } },
    { id: 'sky', name: 'Ground', facing: { to: 'free' as const } },
  ];
  let tracing = clickRound(
    EMPTY_TRACING,
    [
      [0, 0],
      [1, 0],
      [0, 1],
    ],
    'A',
    ' hours',
  );
  tracing = clickRound(
    tracing,
    [
      [4, 0],
      [5, 0],
      [4, 1],
    ],
    'A',
    'Sky',
  );
  const drawn = drawTracing(tracing, { ...OPTIONS, known });
  expect('block' in drawn && drawn.block.roles).toEqual([
    known[0],
    { id: 'sky-2', name: 'Sky', facing: { to: 'upright' } },
  ]);
  expect(unitsOf(drawn)[0]!.patches.map((patch) => patch.role)).toEqual(['hours', 'sky-2']);
});

describe('the centre', () => {
  test('is found from the arcs of a whole ring, and how sure that is', () => {
    const ring = traceRing({ count: 12, inner: 3, outer: 6, traced: 12 }, [4, 7]);
    const found = centreOfArcs(ring, 0.01)!;
    expect(distance(found.centre, [4, 7])).toBeLessThan(1e-9);
    expect(found.within).toBeLessThan(0.05);
    const wedge = traceRing({ count: 12, inner: 3, outer: 6, traced: 1 }, [4, 7]);
    expect(centreOfArcs(wedge, 0.01)!.within).toBeGreaterThan(0.1);
    expect(
      centreOfArcs(
        clickRound(EMPTY_TRACING, [
          [0, 0],
          [1, 0],
          [0, 1],
        ]),
        0.01,
      ),
    ).toBeNull();
  });

  test('is found from one wedge, once it is known how many there are', () => {
    const wedge = traceRing({ count: 20, inner: 2, outer: 8, traced: 1 }, [4, 7]);
    const unit = { id: 'A', count: 20, mirrored: 'no' } as const;
    expect(distance(centreOfCopies(wedge, unit, 0.05)!, [4, 7])).toBeLessThan(1e-9);
    expect(centreOfCopies(wedge, { ...unit, count: 1 }, 0.05)).toBeNull();
  });
});

const angleOf = ([x, y]: Point): number => (Math.atan2(-x, y) * 180) / Math.PI;
