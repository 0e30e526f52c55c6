import { expect, it } from 'vitest';
import { makeNoise } from '../support/noise.ts';
import { LiveServer } from '../support/live-server.ts';
import { TeacherBrowser } from '../support/people.ts';
import { openPreparedClass, studentNames } from '../support/prepared-class.ts';

it(
  'EDGE-1: a class notices nothing of malformed events and requests beside it',
  { timeout: 60_000 },
  async () => {
    const server = await LiveServer.start();
    try {
      const teacher = new TeacherBrowser(server);
      await teacher.setUp();
      const usual = await openPreparedClass(server, teacher, studentNames(6));
      const noisy = await openPreparedClass(server, teacher, studentNames(60, 'Guest'));
      const report = await makeNoise(Number(new URL(server.url).port), [usual, noisy], 3000, 20261125);
      expect(report.failures).toEqual([]);
      expect(report.sent).toBeGreaterThanOrEqual(3000);
      expect(report.refused).toBeGreaterThan(1500);
      expect(report.answers).toBe(report.rounds * 6);
    } finally {
      await server.stop();
    }
  },
);
