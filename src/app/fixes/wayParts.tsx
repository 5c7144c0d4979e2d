/** What is fetched once the figures stand: it follows the plan from then on. */
import type { WayParts } from '../store/later.ts';
import { Sentence } from '../working/Sentence.tsx';
import { follow } from './following.ts';
import { Head } from './Head.tsx';
import { SlipRow } from './SlipRow.tsx';
import { Taken } from './Taken.tsx';
import { Ways } from './Ways.tsx';
import './fixes.css';

export const WAY_PARTS: WayParts = { Head, Sentence, Ways, Taken, Slip: SlipRow };

follow();
