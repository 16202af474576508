/** Where one was in the list, so that the way back leads there; of this page alone. */
interface Place {
  address: string;
  /** The listing at the top of the screen, and how far from it, pixels. */
  id?: string;
  top?: number;
}

let left: Place = { address: "/" };

/** The address of the list as it was left: its search and filters. */
export const listAddress = (): string => left.address;

/** Where in the list of this address one was. */
export const placeIn = (address: string): Place => (left.address === address ? left : { address });

const STRIP = 80;

/** Keeps what is at the top of the screen now. */
export function keepPlace(address: string, list: Element | null): void {
  left = { address };
  if (scrollY === 0) return;
  for (const item of list?.children ?? []) {
    const { top, bottom } = item.getBoundingClientRect();
    if (bottom < STRIP) continue;
    left = { address, id: item.getAttribute("data-id") ?? "", top };
    return;
  }
}

/** Scrolls so that it stands where it stood. */
export function scrollToPlace(place: Place, list: Element | null): void {
  if (place.id === undefined || place.top === undefined) return;
  const item = [...(list?.children ?? [])].find((one) => one.getAttribute("data-id") === place.id);
  if (item) scrollBy(0, item.getBoundingClientRect().top - place.top);
}
