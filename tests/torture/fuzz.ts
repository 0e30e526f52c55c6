import { makeNoise } from '../support/noise.ts';
import { TeacherBrowser } from '../support/people.ts';
import { openPreparedClass, studentNames } from '../support/prepared-class.ts';
import { ServerProcess } from '../support/server-process.ts';
import type { Report } from './report.ts';

/** A hundred thousand things that nobody should send, beside a class that must not notice. */
export async function fuzz(count: number, seed: number): Promise<Report> {
  const server = await ServerProcess.start();
  const teacher = new TeacherBrowser(server);
  await teacher.setUp();
  const usual = await openPreparedClass(server, teacher, studentNames(10));
  const noisy = await openPreparedClass(server, teacher, studentNames(200, 'Guest'));
  server.complaints = '';
  const report = await makeNoise(server.port, [usual, noisy], count, seed);
  const stillThere = server.running;
  const complaints = server.complaints.split('\n').filter((line) => /"level":(50|60)/.test(line));
  await server.remove();
  const failures = [...report.failures, ...complaints];
  const some = failures.slice(0, 5).join('\n    ');
  return {
    ok: stillThere && failures.length === 0,
    text:
      `${String(report.sent)} malformed or random events and requests: ${String(report.refused)} refused, ` +
      `${String(report.taken)} within the rules, ${String(report.tooFast)} too fast; ${String(failures.length)} ` +
      `failures inside. The class beside it: ${String(report.rounds)} rounds, ${String(report.answers)} answers, all ` +
      `kept and shown, the slowest acknowledged in ${report.slowest.toFixed(0)} ms.${some ? `\n    ${some}` : ''}`,
  };
}
