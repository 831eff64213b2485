import type { DensityShifts } from './interval-shifts.ts'

/** Written by `node build/coating-coverage.mjs tune`, from simulated panels whose seeds serve for nothing else. */
export const intervalTable: readonly DensityShifts[] = [
  {
    readings: 15,
    shifts: {
      area: {
        none: {
          low: 0,
          high: 0.499,
        },
        few: {
          low: -0.166,
          high: -0.059,
        },
        several: {
          low: 0.09,
          high: -0.035,
        },
        'nearly all': {
          low: -0.5,
          high: 0,
        },
      },
      volume: {
        none: {
          low: 0,
          high: 1.971,
        },
        few: {
          low: -0.306,
          high: 0.029,
        },
        several: {
          low: -0.068,
          high: -0.182,
        },
        'nearly all': {
          low: -0.263,
          high: -0.02,
        },
      },
    },
  },
  {
    readings: 25,
    shifts: {
      area: {
        none: {
          low: 0,
          high: 0.397,
        },
        few: {
          low: -0.146,
          high: -0.066,
        },
        several: {
          low: 0.031,
          high: 0.032,
        },
        'nearly all': {
          low: -0.433,
          high: 0,
        },
      },
      volume: {
        none: {
          low: 0,
          high: 1.017,
        },
        few: {
          low: -0.429,
          high: 0.286,
        },
        several: {
          low: -0.123,
          high: -0.102,
        },
        'nearly all': {
          low: -0.154,
          high: 0.099,
        },
      },
    },
  },
  {
    readings: 50,
    shifts: {
      area: {
        none: {
          low: 0,
          high: 0,
        },
        few: {
          low: -0.221,
          high: 0.013,
        },
        several: {
          low: 0.006,
          high: 0.063,
        },
        'nearly all': {
          low: 0,
          high: 0,
        },
      },
      volume: {
        none: {
          low: 0,
          high: 0,
        },
        few: {
          low: -0.5,
          high: 0.19,
        },
        several: {
          low: -0.173,
          high: 0.02,
        },
        'nearly all': {
          low: 0.125,
          high: 0.125,
        },
      },
    },
  },
  {
    readings: 100,
    shifts: {
      area: {
        none: {
          low: 0,
          high: 0,
        },
        few: {
          low: 0,
          high: 0.124,
        },
        several: {
          low: 0.04,
          high: 0.128,
        },
        'nearly all': {
          low: 0,
          high: 0.004,
        },
      },
      volume: {
        none: {
          low: 0,
          high: 0,
        },
        few: {
          low: -0.149,
          high: 0.082,
        },
        several: {
          low: -0.136,
          high: 0.031,
        },
        'nearly all': {
          low: 0.035,
          high: 0.588,
        },
      },
    },
  },
]
