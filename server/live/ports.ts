import type { ClassId, SeatId, Time } from '../../shared/protocol/ids.ts';
import type { Snapshot } from '../../shared/protocol/events.ts';
import type { BoardView, DeskView, StandOwnView, StandSharedView } from '../../shared/protocol/views.ts';

/** The one way out to the screens; each call reaches every device of its kind. */
export interface Publisher {
  toStands(classId: ClassId, snapshot: Snapshot<StandSharedView>): void;
  /** Once the seat is gone, its devices get nothing more of the class. */
  toSeat(classId: ClassId, seatId: SeatId, snapshot: Snapshot<StandOwnView>): void;
  toBoards(classId: ClassId, snapshot: Snapshot<BoardView>): void;
  toDesks(classId: ClassId, snapshot: Snapshot<DeskView>): void;
}

export interface Clock {
  now(): Time;
  /** Runs once after so many milliseconds; gives back how to stop it. */
  after(milliseconds: number, run: () => void): () => void;
}

/** Fresh random identifiers. */
export type NewId = () => string;

export interface Log {
  error(details: object, message: string): void;
  warn(details: object, message: string): void;
  info(details: object, message: string): void;
}
