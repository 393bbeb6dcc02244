import type { Machine, Workshop } from '../../workshop/workshop.ts';
import { machineOf } from '../shop.ts';

/** Where hand work is done: the hand tools, or the bench that stands for them. */
export const handBench = (workshop: Workshop): Machine | undefined =>
  machineOf(workshop, 'hand tools') ?? machineOf(workshop, 'bench');
