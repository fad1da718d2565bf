/** Jobs that once broke the engine, each named after its fault. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readLayoutJob } from '../../src/plan/read-layout-job.ts';
import { Packer } from '../../workers/packer.ts';
import { proofread } from '../../workers/proof/proofread.ts';

const folder = new URL('./fixtures/', import.meta.url);

for (const name of readdirSync(folder).filter((n) => n.endsWith('.json'))) {
  test(name.replaceAll('-', ' ').replace('.json', ''), async () => {
    const job = { ...readLayoutJob(readFileSync(new URL(name, folder), 'utf8')), seconds: 1 };
    const answer = await new Packer().plan(job);
    expect(proofread(job, answer)).toEqual([]);
    expect(answer.layouts.length).toBeGreaterThan(0);
  });
}
