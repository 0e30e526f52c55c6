import type { Migration } from './migration.ts';

/**
 * Ids are random text given by the caller, times are UTC milliseconds, booleans 0 or 1. What is read and written
 * only as a whole (an exercise, places, a verdict, settings, a class's copy of its plan) is JSON text.
 */
export const firstTables: Migration = {
  number: 1,
  up(database) {
    database.exec(`
      create table teachers (
        id text primary key,
        name text not null,
        name_key text not null unique,
        passphrase_hash text not null,
        created_at integer not null
      ) strict;

      create table sessions (
        token_hash text primary key,
        teacher_id text not null references teachers on delete cascade,
        expires_at integer not null
      ) strict;
      create index sessions_of_teacher on sessions (teacher_id);

      create table invitations (
        token_hash text primary key,
        expires_at integer not null
      ) strict;

      create table settings (
        key text primary key,
        value text not null
      ) strict;

      create table groups (
        id text primary key,
        teacher_id text not null references teachers on delete cascade,
        name text not null,
        school text not null,
        instrument text not null,
        naming text not null,
        language text not null,
        purge_at integer,
        created_at integer not null
      ) strict;
      create index groups_of_teacher on groups (teacher_id);

      create table students (
        id text primary key,
        group_id text not null references groups on delete cascade,
        name text not null,
        seat_number integer,
        alias text,
        team text,
        more_time real not null
      ) strict;
      create index students_of_group on students (group_id);

      create table plans (
        id text primary key,
        group_id text not null references groups on delete cascade,
        title text not null,
        updated_at integer not null
      ) strict;
      create index plans_of_group on plans (group_id);

      create table exercises (
        plan_id text not null references plans on delete cascade,
        position integer not null,
        exercise text not null check (json_valid(exercise)),
        seconds integer,
        primary key (plan_id, position)
      ) strict;

      create table classes (
        id text primary key,
        group_id text not null references groups on delete cascade,
        code text not null,
        opened_at integer not null,
        closed_at integer,
        settings text not null check (json_valid(settings)),
        plan text check (json_valid(plan)),
        cursor integer not null default 0,
        stage text not null default 'rest' check (stage in ('rest', 'round')),
        show text check (json_valid(show))
      ) strict;
      create unique index open_class_codes on classes (code) where closed_at is null;
      create index classes_by_code on classes (code, opened_at);
      create index classes_of_group on classes (group_id, opened_at);

      create table rounds (
        id text primary key,
        class_id text not null references classes on delete cascade,
        number integer not null,
        exercise text not null check (json_valid(exercise)),
        plan_index integer,
        seconds integer,
        phase text not null check (phase in ('open', 'held', 'revealed')),
        voided integer not null check (voided in (0, 1)),
        opened_at integer not null,
        held_at integer,
        revealed_at integer,
        unique (class_id, number)
      ) strict;

      create table answers (
        round_id text not null references rounds on delete cascade,
        student_id text not null references students on delete cascade,
        late integer not null check (late in (0, 1)),
        send_id text not null,
        seen text not null check (json_valid(seen)),
        places text not null check (json_valid(places)),
        done integer not null check (done in (0, 1)),
        at integer not null,
        given_by text not null check (given_by in ('student', 'teacher')),
        verdict text not null check (json_valid(verdict)),
        accepted integer not null check (accepted in (0, 1)),
        counted integer not null check (counted in (0, 1)),
        primary key (round_id, student_id, late)
      ) strict;
      create index answers_of_student on answers (student_id);

      create table seats (
        id text primary key,
        class_id text not null references classes on delete cascade,
        token_hash text not null unique,
        name text not null,
        student_id text references students on delete cascade,
        status text not null check (status in ('asking', 'in', 'gone')),
        reason text check (reason in ('new', 'move', 'moved', 'refused', 'left')),
        joined_at integer not null
      ) strict;
      create index seats_of_class on seats (class_id);
      create index seats_of_student on seats (student_id);

      -- The one answer of each student that counts in a round: a late one that the teacher lets count goes
      -- before the one in time.
      create view counted_answers as
        select round_id, student_id, accepted or verdict ->> 'kind' = 'right' as is_right
        from answers
        where (late = 1 and counted = 1) or (late = 0 and not exists (
          select 1 from answers other
          where other.round_id = answers.round_id and other.student_id = answers.student_id
            and other.late = 1 and other.counted = 1
        ));
    `);
  },
};
