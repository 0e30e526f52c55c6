import type { Brand } from '../lib/brand.ts';

/** Random, unguessable identifiers, made by the server (`SendId`: by the student's device). */
export type TeacherId = Brand<string, 'TeacherId'>;
export type GroupId = Brand<string, 'GroupId'>;
export type StudentId = Brand<string, 'StudentId'>;
export type PlanId = Brand<string, 'PlanId'>;
export type ClassId = Brand<string, 'ClassId'>;
export type SeatId = Brand<string, 'SeatId'>;
export type RoundId = Brand<string, 'RoundId'>;
export type SendId = Brand<string, 'SendId'>;

/** Six letters without vowels and look-alikes; opens the door to one class while it lasts. */
export type ClassCode = Brand<string, 'ClassCode'>;

/** Milliseconds since 1970-01-01 UTC, by the server's clock. */
export type Time = Brand<number, 'Time'>;
