/**
 * What can hurt somebody while an arm is weighted, and in which order it is not: plain sentences for screen and prompt.
 *
 * The order, thought through. With the camera on and the weights off, the camera's end is the heavy one: it wants down,
 * and on its rest it is down. Each weight then takes some of that off, until the arm floats. With the weights on and the
 * camera off, the weights drop, a short way and hard, and the end that carried the camera flies up, several times as far
 * and as fast, into whoever bends over it. So the camera is on whenever a weight is. Its rest also bears what would
 * otherwise tip the support towards it. A maker of counterweighted light booms advises the same for those: the rear
 * weights off first, the boom down (chimeralighting.com, answer on the locking of a boom's pivot); and a handbook wants
 * the camera's end on the ground, held down, before weights go on or off (taylorfrancis.com, 9780240813387, ch. on
 * cranes, abstract). The rest is common practice, no source.
 */
import { withUnit } from '../findings/words.ts';
import type { ArmBalance, Held, MotorLoad } from './arm.ts';
import type { BalanceRun } from './balance.ts';

/** One caution. */
export interface Caution {
  id: string;
  text: string;
  /** The same with its figures by the names of their workings, if it has some. */
  pieces?: readonly (string | { text: string; of: string })[];
}

const WEIGH_DOWN: Caution = {
  id: 'weigh-down',
  text: 'Spread the feet, lock the legs, level the support and weigh it down, before anything goes on the arm. The figures know no wind, no slope and no elbow.',
};

const MAKER: Caution = {
  id: 'maker',
  text: 'The makers’ manuals, local rules and licensed practice come first. Overhead, in public, or with heavy arms this is work for trained riggers.',
};

/** For every arm with a counterweight, the gravest first. */
export const ARM_CAUTIONS: readonly Caution[] = [
  {
    id: 'order',
    text: 'On: first the camera, then the weights, one by one. Off: first the weights, one by one, the camera last. All of it with the camera’s end down on a rest: then that end is the heavy one, and has nowhere to fall. With the camera off and weights on, the weights drop and the camera’s end flies up.',
  },
  {
    id: 'hold',
    text: 'While weights or camera go on or off, the arm is locked and somebody holds the camera’s end down; alone, tie it down. Stand beside the arm, not in its swing. A motor is no lock: it lets go when its power does.',
  },
  {
    id: 'overhead',
    text: 'Heavy masses overhead: nobody under the arm or the counterweight, nor where either end can swing.',
  },
  {
    id: 'tether',
    text: 'Tether what can come loose: camera, lens, head, and each weight, which also wants a stop behind it on its bar.',
  },
  {
    id: 'pinch',
    text: 'Pinch points: at the pivot, between the bars, under the weights. An arm that starts by itself gives no warning: fingers, hair, straps and cables stay out.',
  },
  {
    id: 'ease-off',
    text: 'Ease the lock off with a hand on the arm. An arm in balance stays where it is put; if it moves, stop it, lock it, and only then shift the weight.',
  },
];

const beyondMotor = ({ motorNm }: Held, { torqueNm }: MotorLoad): boolean =>
  torqueNm === null || motorNm > torqueNm;

function pullOf({ armNm }: Held, of: string): NonNullable<Caution['pieces']> {
  if (armNm === 0) return ['neither end drops'];
  const end = armNm > 0 ? 'camera’s end' : 'counterweight’s end';
  return [`the ${end} drops with `, { text: withUnit(Math.abs(armNm), 'N m'), of }];
}

/** What is let loose if camera or weight comes off alone, with its numbers. */
function loose({ cameraOff, weightOff, motor }: ArmBalance): Caution {
  const most = withUnit(Math.max(cameraOff.motorNm, weightOff.motorNm), 'N m');
  const held = [cameraOff, weightOff].some((state) => beyondMotor(state, motor))
    ? ` Do not count on the motor to hold that: it would take ${most} of it.`
    : '';
  const pieces = [
    'Level, with the camera off, ',
    ...pullOf(cameraOff, 'balance.cameraOffNm'),
    '; with the counterweight off, ',
    ...pullOf(weightOff, 'balance.weightOffNm'),
    `.${held}`,
  ];
  const text = pieces.map((piece) => (typeof piece === 'string' ? piece : piece.text)).join('');
  return { id: 'loose', text, pieces };
}

/** All cautions for a rig, the gravest first; the last says who decides. */
export const balanceCautions = ({ arm }: BalanceRun): Caution[] =>
  arm === null ? [WEIGH_DOWN, MAKER] : [...ARM_CAUTIONS, loose(arm), WEIGH_DOWN, MAKER];
