/** What is drawn over the picture: lines with a light rim so that they show on any print, told apart by form and not by colour alone. */
import { nothing, type SVGTemplateResult, svg } from 'lit';
import { edgeOfLine, middleOf, outlineOfSteps } from '../../quilt/tracing/line-shape.ts';
import type { Snap } from '../../quilt/tracing/snap.ts';
import { cornerOf, lastCorner, type Tracing } from '../../quilt/tracing/tracing.ts';
import { arcOfBulge, bulgeThrough } from '../../shape/arc-through.ts';
import { type Edge, edgesOf, type Outline } from '../../shape/outline.ts';
import { outlineCentroid } from '../../shape/outline-measures.ts';
import type { Point } from '../../shape/point.ts';
import { copyOutlines } from './copy-places.ts';
import { type Sight, toBoard } from './sight.ts';
import type { Tracer } from './tracer.ts';

export interface TracedDrawing {
  readonly sight: Sight;
  /** As it is while something is moved. */
  readonly tracing: Tracing;
  readonly tracer: Tracer;
  readonly pointed: { readonly at: Point; readonly snap: Snap } | null;
  readonly moving: boolean;
}

export function drawTraced({ sight, tracing, tracer, pointed, moving }: TracedDrawing): SVGTemplateResult {
  const { chosen } = tracer;
  const copies = moving ? [] : copyOutlines(tracer.tracing, tracer.drawn);
  const isChosen = (kind: string, id: number): boolean => chosen?.kind === kind && chosen.id === id;
  return svg`
    ${copies.map((outline) => svg`<path class="trace-copy" d=${outlinePath(sight, outline)} />`)}
    ${tracing.patches.map((patch) => {
      const outline = outlineOfSteps(tracing, patch.steps);
      return svg`<path class=${isChosen('patch', patch.id) ? 'trace-patch chosen' : 'trace-patch'} d=${outlinePath(sight, outline)} />`;
    })}
    ${tracing.lines.map((line) => {
      const d = edgePath(sight, edgeOfLine(tracing, line));
      return svg`<path class="board-under" d=${d} /><path class=${isChosen('line', line.id) ? 'trace-line chosen' : 'trace-line'} d=${d} />`;
    })}
    ${drawNext(sight, tracing, tracer, pointed, moving)}
    ${tracing.lines.map((line) => {
      const [x, y] = toBoard(sight, middleOf(edgeOfLine(tracing, line)));
      return svg`<path class="trace-handle" d="M${x - 5} ${y}l5 -5 5 5 -5 5z" />`;
    })}
    ${tracing.corners.map((corner) => {
      const [x, y] = toBoard(sight, corner.at);
      const chosenNow = isChosen('corner', corner.id);
      const start = tracing.begun?.start === corner.id;
      return svg`<circle class=${chosenNow ? 'trace-corner chosen' : start ? 'trace-corner start' : 'trace-corner'} cx=${x} cy=${y} r=${chosenNow || start ? 7 : 4.5} />`;
    })}
    ${tracing.patches.map((patch) => {
      const [x, y] = toBoard(sight, outlineCentroid(outlineOfSteps(tracing, patch.steps)));
      return svg`<text class="trace-name" x=${x} y=${y}>${tracer.nameOf(patch)}</text>`;
    })}
    ${tracing.centre === undefined ? nothing : drawCentre(toBoard(sight, tracing.centre))}
    ${pointed === null ? nothing : drawSnap(sight, pointed.snap)}
  `;
}

/** The line that the next click would draw. */
function drawNext(
  sight: Sight,
  tracing: Tracing,
  { arc, tool }: Tracer,
  pointed: TracedDrawing['pointed'],
  moving: boolean,
): SVGTemplateResult | typeof nothing {
  const last = lastCorner(tracing);
  if (last === null || pointed === null || moving || tool !== 'draw') return nothing;
  const from = cornerOf(tracing, last).at;
  const to = pointed.snap.at;
  const bent = arc === null || arc === 'asked' ? null : arcOfBulge(from, to, bulgeThrough(from, arc, to));
  const d = edgePath(sight, bent === null ? { from, to } : { from, to, arc: bent.arc });
  return svg`<path class="board-under" d=${d} /><path class="trace-next" d=${d} />`;
}

function drawCentre([x, y]: Point): SVGTemplateResult {
  const d = `M${x - 11} ${y}h22M${x} ${y - 11}v22M${x - 6} ${y}a6 6 0 1 0 12 0a6 6 0 1 0 -12 0`;
  return svg`<path class="board-under" d=${d} /><path class="trace-centre" d=${d} />`;
}

/** Each kind of snapping has a mark of its own: ring, diamond, bar, cross. */
function drawSnap(sight: Sight, snap: Snap): SVGTemplateResult | typeof nothing {
  const [x, y] = toBoard(sight, snap.at);
  const marks: Readonly<Record<Snap['kind'], string>> = {
    corner: `M${x - 10} ${y}a10 10 0 1 0 20 0a10 10 0 1 0 -20 0`,
    copy: `M${x - 10} ${y}a10 10 0 1 0 20 0a10 10 0 1 0 -20 0`,
    middle: `M${x - 10} ${y}l10 -10 10 10 -10 10z`,
    line: `M${x - 8} ${y - 8}h16v16h-16z`,
    centre: `M${x - 12} ${y - 12}l24 24m0 -24l-24 24`,
    free: '',
  };
  return snap.kind === 'free'
    ? nothing
    : svg`<path class="board-under" d=${marks[snap.kind]} /><path class="trace-snap" d=${marks[snap.kind]} />`;
}

export function outlinePath(sight: Sight, outline: Outline): string {
  return `${edgesOf(outline)
    .map((edge, i) => edgePath(sight, edge, i === 0))
    .join('')}Z`;
}

/** The plane is shown without slant, so that a circle's arc is a circle's arc on the board. */
function edgePath(sight: Sight, { from, to, arc }: Edge, begins = true): string {
  const [a, b] = [toBoard(sight, from), toBoard(sight, to)];
  const move = begins ? `M${tenth(a)}` : '';
  if (arc === undefined) return `${move}L${tenth(b)}`;
  const radius = arc.radius * sight.zoom;
  return `${move}A${radius.toFixed(2)} ${radius.toFixed(2)} 0 ${arc.large === true ? 1 : 0} ${arc.turn === 'clockwise' ? 1 : 0} ${tenth(b)}`;
}

const tenth = ([x, y]: Point): string => `${x.toFixed(2)} ${y.toFixed(2)}`;
