/** The pointer and the keys on the board where patches are traced. */
import type { SVGTemplateResult } from 'lit';
import { formatLength } from '../../quilt/format-length.ts';
import type { LengthUnit } from '../../quilt/quilt.ts';
import type { Traced } from '../../quilt/tracing/draw-lines.ts';
import { edgeOfLine, middleOf, nearestOn, outlineOfSteps } from '../../quilt/tracing/line-shape.ts';
import { bendLine, dropCorner, moveCorner } from '../../quilt/tracing/mend-lines.ts';
import type { Snap } from '../../quilt/tracing/snap.ts';
import { lastCorner, type Tracing } from '../../quilt/tracing/tracing.ts';
import { flatten } from '../../shape/flatten.ts';
import { distance, type Point, type Polygon } from '../../shape/point.ts';
import type { BoardHand } from './board-hand.ts';
import type { Sight } from './sight.ts';
import { drawTraced } from './trace-drawing.ts';
import { type Chosen, placed, type Tracer } from './tracer.ts';

type Held =
  | { readonly kind: 'corner' | 'line'; readonly id: number; readonly traced: Traced }
  | { readonly kind: 'centre'; readonly at: Point };

export class TraceHand implements BoardHand {
  private readonly tracer: Tracer;
  private readonly unit: () => LengthUnit;
  private held: Held | null = null;
  private pointed: { readonly at: Point; readonly snap: Snap } | null = null;

  constructor(tracer: Tracer, unit: () => LengthUnit) {
    this.tracer = tracer;
    this.unit = unit;
  }

  grab(at: Point, reach: number): boolean {
    const { tracing, tool } = this.tracer;
    if (tool === 'centre') return false;
    const found = this.cornerAt(at, reach) ?? this.handleAt(at, reach);
    if (found !== null) {
      this.held = { kind: found.kind as 'corner' | 'line', id: found.id, traced: { tracing } };
    } else if (tracing.centre !== undefined && distance(tracing.centre, at) <= reach) {
      this.held = { kind: 'centre', at };
    }
    return this.held !== null;
  }

  drag(at: Point, reach: number): void {
    const { held, tracer } = this;
    const { tracing } = tracer;
    if (held === null) return;
    if (held.kind === 'centre') {
      this.held = { kind: 'centre', at };
    } else if (held.kind === 'corner') {
      const snap = tracer.snap(at, reach / 2, held.id);
      const traced = snap.kind === 'corner' ? moveCorner(tracing, held.id, at) : moveCorner(tracing, held.id, snap.at);
      this.pointed = { at, snap };
      if ('tracing' in traced) this.held = { ...held, traced };
    } else {
      const line = tracing.lines.find((each) => each.id === held.id)!;
      const { from, to } = edgeOfLine(tracing, line);
      const straight = distance(nearestOn({ from, to }, at), at) <= reach / 3;
      const traced = bendLine(tracing, held.id, straight ? null : at);
      this.pointed = null;
      if ('tracing' in traced) this.held = { ...held, traced };
    }
  }

  drop(made: boolean): void {
    const { held, tracer, pointed } = this;
    this.held = null;
    this.pointed = null;
    if (held === null || !made) return;
    if (held.kind === 'centre') {
      tracer.markCentre(held.at);
    } else if (held.kind === 'corner' && pointed?.snap.kind === 'corner') {
      tracer.step(dropCorner(tracer.tracing, held.id, pointed.snap), 'Two corners became one.');
    } else {
      tracer.choose({ kind: held.kind, id: held.id });
      tracer.step(held.traced, held.kind === 'corner' ? 'The corner is moved.' : 'The line is bent.');
    }
  }

  click(at: Point, reach: number): void {
    const { tracer } = this;
    switch (tracer.tool) {
      case 'draw':
        tracer.place(at, reach);
        break;
      case 'centre':
        tracer.markCentre(tracer.snap(at, reach).at);
        break;
      default: {
        const chosen = this.choosable(at, reach);
        tracer.choose(chosen);
        tracer.say(chosen === null ? 'Nothing lies here.' : `The ${chosen.kind} is chosen.`);
      }
    }
  }

  hover(at: Point | null, reach: number): void {
    this.pointed = at === null ? null : { at, snap: this.tracer.snap(at, reach) };
  }

  key(event: KeyboardEvent, at: Point, reach: number): boolean {
    const { tracer } = this;
    if (event.ctrlKey || event.metaKey) {
      const redo = event.key === 'y' || (event.key.toLowerCase() === 'z' && event.shiftKey);
      if (!redo && event.key !== 'z') return false;
      if (redo) tracer.redo();
      else tracer.undo();
      return true;
    }
    switch (event.key) {
      case 'a':
        tracer.askArc();
        return true;
      case 'c':
        tracer.close();
        return true;
      case 'h':
        tracer.choose(this.choosable(at, reach));
        tracer.say(tracer.chosen === null ? 'Nothing lies here.' : `The ${tracer.chosen.kind} is chosen.`);
        return true;
      case 'o':
        tracer.markCentre(tracer.snap(at, reach).at);
        return true;
      case 'u':
        tracer.undo();
        return true;
      case 'Backspace':
        if (tracer.tracing.begun !== undefined) tracer.undo();
        else tracer.deleteChosen();
        return true;
      case 'Delete':
        tracer.deleteChosen();
        return true;
      case 'Escape':
        return tracer.escape();
      default:
        return false;
    }
  }

  wordsAt(at: Point, reach: number): string {
    const { tracing } = this.tracer;
    const origin = tracing.centre ?? [0, 0];
    const unit = this.unit();
    const format = { denominator: 32, decimals: 2 } as const;
    const [x, y] = [at[0] - origin[0], at[1] - origin[1]];
    const across = `${formatLength(Math.abs(x), unit, format)} ${x < 0 ? 'left' : 'right'}`;
    const up = `${formatLength(Math.abs(y), unit, format)} ${y < 0 ? 'down' : 'up'}`;
    const snap = this.tracer.snap(at, reach);
    const handle = this.handleAt(at, reach);
    const on = handle !== null ? 'On the middle of a line.' : snap.kind === 'free' ? '' : placed(snap);
    return `${across}, ${up}${tracing.centre === undefined ? '' : ' of the centre'}. ${on}`;
  }

  leap(from: Point, forward: boolean): Point | null {
    const { tracing } = this.tracer;
    const stops = [
      ...tracing.corners.map((corner) => corner.at),
      ...tracing.lines.map((line) => middleOf(edgeOfLine(tracing, line))),
    ];
    const here = stops.findIndex((stop) => distance(stop, from) < 1e-9);
    if (stops.length === 0) return null;
    const next = here < 0 ? (forward ? 0 : stops.length - 1) : (here + (forward ? 1 : stops.length - 1)) % stops.length;
    return stops[next]!;
  }

  draw(sight: Sight): SVGTemplateResult {
    const { tracer, held, pointed } = this;
    const shown: Tracing =
      held === null
        ? tracer.tracing
        : held.kind === 'centre'
          ? { ...tracer.tracing, centre: held.at }
          : 'tracing' in held.traced
            ? held.traced.tracing
            : tracer.tracing;
    return drawTraced({ sight, tracing: shown, tracer, pointed, moving: held !== null });
  }

  private cornerAt(at: Point, reach: number): Chosen | null {
    const { corners } = this.tracer.tracing;
    const near = corners
      .filter((corner) => distance(corner.at, at) <= reach)
      .sort((a, b) => distance(a.at, at) - distance(b.at, at))[0];
    return near === undefined ? null : { kind: 'corner', id: near.id };
  }

  /** The handle in the middle of a line; not of one that is being drawn from. */
  private handleAt(at: Point, reach: number): Chosen | null {
    const { tracing } = this.tracer;
    const last = lastCorner(tracing);
    const line = tracing.lines.find(
      (each) =>
        distance(middleOf(edgeOfLine(tracing, each)), at) <= reach &&
        (last === null || each.to !== last || each.from !== last),
    );
    return line === undefined ? null : { kind: 'line', id: line.id };
  }

  private choosable(at: Point, reach: number): Chosen | null {
    const { tracing } = this.tracer;
    const onLine = (): Chosen | null => {
      const near = tracing.lines
        .map((line) => ({ line, away: distance(nearestOn(edgeOfLine(tracing, line), at), at) }))
        .filter(({ away }) => away <= reach)
        .sort((a, b) => a.away - b.away)[0];
      return near === undefined ? null : { kind: 'line', id: near.line.id };
    };
    const inside = (): Chosen | null => {
      const patch = tracing.patches.find((each) =>
        holds(flatten(outlineOfSteps(tracing, each.steps), { side: 'chord', within: 1e-2 }), at),
      );
      return patch === undefined ? null : { kind: 'patch', id: patch.id };
    };
    return this.cornerAt(at, reach) ?? onLine() ?? inside();
  }
}

/** Whether a polygon holds a place: a ray to the right crosses its edges an odd number of times. */
function holds(polygon: Polygon, [x, y]: Point): boolean {
  let inside = false;
  polygon.forEach(([ax, ay], i) => {
    const [bx, by] = polygon[(i + 1) % polygon.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}
