/**
 * The packing engine alone: reads a layout job from a file, writes the answer as JSON to standard output.
 * Exit status 0: answered. 1: the engine failed. 2: the job breaks a rule; one line on standard error says where.
 */
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { LayoutAnswer, LayoutJob } from '../plan/layout-job.ts';
import { readLayoutJob } from '../plan/read-layout-job.ts';
import { startPacker } from './start-packer.ts';

/** Milliseconds that the engine has, once interrupted, to finish a solve and answer by itself. */
const PATIENCE = 3000;

process.exitCode = await main(process.argv.slice(2));

async function main(args: readonly string[]): Promise<number> {
  const [file] = args;
  if (file === undefined || args.length > 1 || file.startsWith('-')) {
    return complain('usage: npm run -s layout -- job.json', 2);
  }
  let job: LayoutJob;
  try {
    job = readLayoutJob(readFileSync(pathOf(file), 'utf8'));
  } catch (error) {
    return complain(`${file}: ${(error as Error).message}`, 2);
  }
  const notYet = notBuiltYet(job);
  if (notYet !== null) return complain(`${file}: ${notYet}`, 2);
  try {
    const answer = await plan(job);
    process.stdout.write(`${JSON.stringify(answer)}\n`);
    return 0;
  } catch (error) {
    return complain(`the engine failed: ${(error as Error).message}`, 1);
  }
}

/** Plans in a worker of its own. Interrupted (Ctrl-C), it answers with the best plan so far. */
async function plan(job: LayoutJob): Promise<LayoutAnswer> {
  const packer = startPacker();
  let best: LayoutAnswer | null = null;
  let giveUp: NodeJS.Timeout | undefined;
  const interrupt = () => {
    const end = () => packer.end('interrupted before there was a plan');
    // Who interrupts twice does not want to wait.
    if (giveUp !== undefined) return end();
    packer.stop();
    giveUp = setTimeout(end, PATIENCE);
  };
  process.on('SIGINT', interrupt);
  try {
    return await packer.plan(job, (progress) => {
      best = progress.answer ?? best;
    });
  } catch (error) {
    // A solve that does not end in time takes its worker with it; what it told before is a clean plan all the same.
    if (giveUp !== undefined && best !== null) return best;
    throw error;
  } finally {
    clearTimeout(giveUp);
    process.off('SIGINT', interrupt);
    packer.end();
  }
}

/** What the format has and the engine does not plan so far. */
function notBuiltYet(job: LayoutJob): string | null {
  if (job.method === 'shears') return 'method: "shears" is not built yet; use "strips"';
  return null;
}

/** npm runs scripts from the project's top and says in INIT_CWD where it was called from. */
function pathOf(file: string): string {
  const from = process.env.INIT_CWD;
  return !existsSync(file) && from !== undefined ? resolve(from, file) : file;
}

function complain(text: string, status: number): number {
  process.stderr.write(`${text.replace(/\s+/g, ' ')}\n`);
  return status;
}
