import type { Source } from './source.ts';

/** All money in minor units, whole. */
export interface PriceLine {
  id: string;
  label: string;
  amount: number;
  /** Formula in words: `27.5 h x 38.00`. */
  how: string;
  source: Source;
  inputs: { label: string; value: string; from: string }[];
}

export interface Price {
  currency: string;
  lines: PriceLine[];
  /** Before tax. */
  net: number;
  tax: number;
  /** What the client pays. */
  total: number;
  /** Low and high from the spread of hours. */
  low: number;
  high: number;
  hours: { low: number; likely: number; high: number };
}

/** A bought-in part as the setting-out prices it. */
export interface BoughtIn {
  /** Part id. */
  part: string;
  name: string;
  quantity: number;
  /** Of one, minor units; null where the setting-out gives none. */
  price: number | null;
}
