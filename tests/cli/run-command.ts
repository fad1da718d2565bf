/** Runs one of the project's commands as a person would, in a process of its own. */
import { type ChildProcess, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export interface Ended {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

const TOP = fileURLToPath(new URL('../..', import.meta.url));

/**
 * @param script the file of src/cli without `.ts`
 * @param whileRunning is given the process as soon as it runs
 */
export function runCommand(
  script: string,
  args: readonly string[],
  whileRunning: (child: ChildProcess) => void = () => {},
): Promise<Ended> {
  const child = spawn(process.execPath, ['--import', 'tsx', `src/cli/${script}.ts`, ...args], { cwd: TOP });
  let [out, err] = ['', ''];
  child.stdout.on('data', (chunk: Buffer) => {
    out += chunk;
  });
  child.stderr.on('data', (chunk: Buffer) => {
    err += chunk;
  });
  whileRunning(child);
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, out, err }));
  });
}
