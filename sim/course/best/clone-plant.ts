import type { Lane, PlantState } from '../../plant/state.ts';
import type { Row } from '../../plant/water.ts';

/** A plant that goes its own way from here; the parts, which never change, are shared. */
export function clonePlant(state: PlantState): PlantState {
  const { pan, supply, store, reservoir, sensors } = state;
  return {
    ...state,
    pan: { core: cloneLane(pan.core), edge: cloneLane(pan.edge) },
    supply: cloneRow(supply),
    return: cloneRow(state.return),
    store: cloneRow(store),
    reservoir: reservoir === null ? null : cloneRow(reservoir),
    sensors: { bodyValue: sensors.bodyValue.slice(), shownValue: sensors.shownValue.slice() },
  };
}

function cloneRow({ massKg, waterC, iceKg }: Row): Row {
  return { massKg: massKg.slice(), waterC: waterC.slice(), iceKg: iceKg.slice() };
}

function cloneLane(lane: Lane): Lane {
  return { ...cloneRow(lane), sheetC: lane.sheetC.slice() };
}
