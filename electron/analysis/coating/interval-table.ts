import type { DensityShifts } from './interval-shifts.ts'

/** Written by `node build/coating-coverage.mjs tune`, from simulated panels whose seeds serve for nothing else. */
export const intervalTable: readonly DensityShifts[] = [
  {
    readings: 15,
    shifts: {
      area: {
        none: {
          low: 0,
          high: 0.451,
        },
        few: {
          low: -0.149,
          high: -0.045,
        },
        several: {
          low: 0.114,
          high: -0.084,
        },
        'nearly all': {
          low: -0.5,
          high: 0,
        },
      },
      volume: {
        none: {
          low: 0,
          high: 1.818,
        },
        few: {
          low: -0.301,
          high: 0.057,
        },
        several: {
          low: -0.098,
          high: -0.147,
        },
        'nearly all': {
          low: -0.153,
          high: 0.043,
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
          high: 0.63,
        },
        few: {
          low: -0.216,
          high: -0.163,
        },
        several: {
          low: 0.03,
          high: 0.022,
        },
        'nearly all': {
          low: -0.39,
          high: 0,
        },
      },
      volume: {
        none: {
          low: 0,
          high: 1.776,
        },
        few: {
          low: -0.381,
          high: 0.166,
        },
        several: {
          low: -0.109,
          high: 0.179,
        },
        'nearly all': {
          low: -0.234,
          high: 0.04,
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
          low: -0.332,
          high: 0.011,
        },
        several: {
          low: 0.064,
          high: 0.044,
        },
        'nearly all': {
          low: 0,
          high: 0.162,
        },
      },
      volume: {
        none: {
          low: 0,
          high: 0,
        },
        few: {
          low: -0.5,
          high: 0.194,
        },
        several: {
          low: -0.084,
          high: 0.022,
        },
        'nearly all': {
          low: 0.03,
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
          low: 0.012,
          high: 0.036,
        },
        several: {
          low: 0.101,
          high: 0.104,
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
          low: -0.055,
          high: 0.001,
        },
        several: {
          low: -0.044,
          high: -0.053,
        },
        'nearly all': {
          low: 0.092,
          high: 0.555,
        },
      },
    },
  },
]
