import { expect, test } from 'vitest';
import { answering, type MonthDone, monthsOf } from '../../../src/app/days/yearWork.ts';
import { yearOfDays } from '../../../src/engine/sky/year.ts';
import { planOf } from '../../outputs/plans.ts';

const plan = planOf({
  place: { zone: 'Europe/Paris', latitudeDeg: 43.3, longitudeDeg: 6.4 },
  window: { used: true, sunAltitudeMinDeg: -12, sunAltitudeMaxDeg: 3 },
});
const ask = { id: 1, plan, year: 2028, runS: 3600 };

test('a year comes in twelve months, whole and in order', () => {
  const months = [...monthsOf(ask)];
  expect(months.map((days) => days.length)).toEqual([31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]);
  expect(months.flat()).toEqual([...yearOfDays(plan, 2028, 3600)]);
});

test('without a place there is none', () => {
  expect([...monthsOf({ ...ask, plan: planOf({}) })]).toEqual([]);
});

test('a newer ask ends the one under way after the month it is at', async () => {
  const posted: MonthDone[] = [];
  let second: Promise<void> | null = null;
  const answer = answering(
    (done) => {
      posted.push(done);
      if (done.id === 1 && done.month === 2) second = answer({ ...ask, id: 2 });
    },
    () => new Promise((resume) => setTimeout(resume)),
  );
  await answer(ask);
  await second;
  expect(posted.filter(({ id }) => id === 1).map(({ month }) => month)).toEqual([0, 1, 2]);
  expect(posted.filter(({ id }) => id === 2).map(({ month }) => month)).toEqual([...Array(12).keys()]);
});
