/** How far the planning has come, in words. */
import type { LayoutAnswer } from '../plan/layout-job.ts';
import type { Proof } from '../plan/tally.ts';
import type { Quilt } from '../quilt/quilt.ts';
import type { GroupState, PlannerState } from './plan-state.ts';

/** The whole, in one sentence that changes only when a group is done. */
export function overallWords(state: PlannerState): string {
  if (state.error !== null) {
    return 'This quilt cannot be planned as it is.';
  }
  const { groups } = state;
  if (groups.length === 0) {
    return state.busy ? 'Working out what must be cut.' : 'There is nothing to cut yet.';
  }
  const done = groups.filter((group) => group.status !== 'waiting' && group.status !== 'planning').length;
  if (state.busy) {
    if (groups.every((group) => group.answer?.status === 'optimal')) {
      return 'All proved least; saving cloth.';
    }
    return `Planning: ${done} of ${groups.length} done.`;
  }
  if (groups.some((group) => group.status === 'failed')) {
    return 'Planning broke off.';
  }
  if (groups.some((group) => group.status === 'stopped')) {
    return 'Stopped: the best so far is shown.';
  }
  if (groups.some((group) => group.answer?.status === 'partial')) {
    return 'Planned, but not everything can be cut.';
  }
  const cloths = state.plan?.tally.cloths ?? [];
  const proved = cloths.filter((cloth) => cloth.proof.state === 'least').length;
  const among = cloths.some((cloth) => cloth.proof.testFirst === true) ? ', the test block cut first' : '';
  return proved === cloths.length
    ? `Planned, and every purchase proved least${among}.`
    : `Planned; ${proved} of ${cloths.length} purchases proved least.`;
}

/**
 * One group of cloths.
 * @param now in milliseconds of `performance.now()`
 */
export function groupWords(group: GroupState, now: number): string {
  switch (group.status) {
    case 'waiting':
      return group.answer === null ? 'waiting its turn' : `${answerWords(group.answer)}; waiting its turn`;
    case 'planning': {
      const { progress, answer } = group;
      const seconds = `${Math.max(0, Math.round((now - group.since) / 1000))} s`;
      if (answer?.status === 'optimal') {
        return `${answerWords(answer)}; trying to cut it from less cloth, ${seconds}`;
      }
      const doing = `${progress?.doing ?? 'starting'}, ${seconds}`;
      return answer === null
        ? `${doing}; no plan yet`
        : `${doing}; best ${answerWords(withBound(answer, progress?.bound))}`;
    }
    case 'planned':
      return group.answer === null ? '' : answerWords(group.answer);
    case 'stopped':
      return group.answer === null ? 'stopped before its first plan' : `stopped; ${answerWords(group.answer)}`;
    case 'failed':
      return `planning failed: ${group.error ?? 'no reason was given'}`;
  }
}

/**
 * The same for the roll itself, without what ticks.
 * @param proof of its purchase, where it is told already: the least purchase may be proved though the least length is not
 */
export function rollWords(group: GroupState, proof: Proof['state'] | null): string {
  const { answer, status } = group;
  const near = answer === null ? null : proof === 'least' ? 'least purchase proved' : answerWords(answer);
  switch (status) {
    case 'planned':
      return near ?? '';
    case 'planning':
      return near === null ? 'being planned' : `${near}; being planned`;
    case 'waiting':
      return near === null ? 'waiting its turn' : `${near}; waiting its turn`;
    default:
      return groupWords(group, 0);
  }
}

/** How near the least possible an answer is. */
export function answerWords(answer: LayoutAnswer): string {
  if (answer.status === 'partial') {
    return 'not everything can be placed';
  }
  if (answer.status === 'optimal') {
    return 'least cost proved';
  }
  if (answer.bound === null || answer.bound <= 0) {
    return 'a plan, not yet proved';
  }
  const over = Math.max(0, answer.cost / answer.bound - 1) * 100;
  return `at most ${over < 9.95 ? over.toFixed(1) : over.toFixed(0)} % above the least possible`;
}

export function groupName(group: GroupState, quilt: Quilt | null): string {
  return group.group.cloths.map((id) => quilt?.cloths.find((cloth) => cloth.id === id)?.name ?? id).join(' and ');
}

function withBound(answer: LayoutAnswer, bound: number | null | undefined): LayoutAnswer {
  return bound == null || answer.status !== 'feasible'
    ? answer
    : { ...answer, bound: Math.max(bound, answer.bound ?? 0) };
}
