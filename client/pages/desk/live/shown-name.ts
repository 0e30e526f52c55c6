import type { DeskStudentView, DeskView } from '../../../../shared/protocol/views.ts';

/** With names hidden a student keeps one number, so that the teacher can still tell them apart. */
export function shownName({ students }: DeskView, student: DeskStudentView, hiding: boolean): string {
  if (!hiding) return student.name;
  return student.seatNumber === null
    ? `Student ${String(students.indexOf(student) + 1)}`
    : `Seat ${String(student.seatNumber)}`;
}
