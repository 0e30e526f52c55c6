import { prepareClass, wait } from '../support/prepared-class.ts';
import { Random } from '../support/random.ts';
import { ServerProcess } from '../support/server-process.ts';
import { AnsweringClass } from './answering-class.ts';
import { sum, type Report } from './report.ts';

/** The server is killed at a random moment while a class answers, and started again; now and then while it starts. */
export async function kills(count: number, seed: number): Promise<Report> {
  const random = new Random(seed);
  const prepared = await prepareClass(30);
  const server = await ServerProcess.start({ dataDir: prepared.dataDir });
  const answering = new AnsweringClass(server, prepared, random);
  const findings = [];
  let whileStarting = 0;
  for (let run = 0; run < count; run += 1) {
    const finding = await answering.round(async () => {
      await server.kill();
      if (random.chance(0.1)) {
        whileStarting += 1;
        const starting = server.resume().catch(() => undefined);
        await wait(random.below(500));
        await server.kill();
        await starting;
      }
      await server.resume();
    });
    findings.push(finding);
  }
  await server.remove();
  const { lost, wrong, acknowledged, resent } = sum(findings);
  return {
    ok: lost === 0 && wrong === 0 && acknowledged > count * 30,
    text:
      `${String(count)} kills under load of 30 students (${String(whileStarting)} times once more while it started): ` +
      `${String(acknowledged)} answers acknowledged, ${String(lost)} of them lost, ${String(wrong)} counted twice or ` +
      `replaced by an older one; ${String(resent)} acknowledged only when sent again. The class went on each time.`,
  };
}
