import type { Account } from '../plant/account.ts';
import type { PlantState } from '../plant/state.ts';
import { rowJ } from '../plant/water.ts';

/**
 * Heat that the water outside the store holds, in pan, pipes and reservoir [J above liquid water at 0 °C].
 */
export function outsideJ({ pan, supply, return: home, reservoir }: PlantState): number {
  const inLoop = rowJ(pan.core) + rowJ(pan.edge) + rowJ(supply) + rowJ(home);
  return inLoop + (reservoir === null ? 0 : rowJ(reservoir));
}

/**
 * What counts as harvested [J]: the heat that came into the store less what was taken from it, and what the water
 * outside the store holds at the end more than it held at the beginning.
 *
 * One rule for open stores and reservoirs. It is the heat balance of all the loop's water: what sun, sky and pump
 * brought it, less what sheet, liner, pipes and reservoir lost, whoever holds it in the end. Water left in the pan is
 * worth what it would bring if it came home that instant: nothing is won by leaving it out, and what was lost
 * meanwhile stays lost. The store's own losses and what is drawn there count neither way.
 */
export function harvestJ(account: Account, plant: PlantState, outsideAtFirstJ: number): number {
  return account.homeJ + outsideJ(plant) - outsideAtFirstJ;
}
