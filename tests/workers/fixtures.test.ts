/**
 * Jobs that the engine once got wrong, each named after the fault. Some say why they are kept, and bring a plan that the engine
 * missed or said there could not be.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { LayoutAnswer } from '../../src/plan/layout-job.ts';
import { readLayoutJob } from '../../src/plan/read-layout-job.ts';
import { tellFault } from '../../workers/proof/fault.ts';
import { proofread } from '../../workers/proof/proofread.ts';
import { checkAnswer } from '../checker/check-answer.ts';
import { planned } from '../outside/engine.ts';

const FOLDER = new URL('./fixtures/', import.meta.url);
const SECONDS = 1;

for (const name of readdirSync(FOLDER).filter((file) => file.endsWith('.json'))) {
  test(name.replaceAll('-', ' ').replace('.json', ''), async () => {
    const text = readFileSync(new URL(name, FOLDER), 'utf8');
    const job = { ...readLayoutJob(text), seconds: SECONDS };
    const answer = await planned(job);
    expect(answer.layouts.length).toBeGreaterThan(0);
    const { plan } = JSON.parse(text) as { readonly plan?: LayoutAnswer };
    if (!plan) return;
    expect([...checkAnswer(job, plan), ...proofread(job, plan).map(tellFault)]).toEqual([]);
    expect(answer.bound).toBeLessThanOrEqual(plan.cost + 1e-6);
    if (answer.status === 'optimal') expect(answer.cost).toBeLessThanOrEqual(plan.cost + 1e-6);
  });
}
