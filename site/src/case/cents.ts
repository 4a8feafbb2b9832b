/** Whole cents of an amount as a number, to compare and for lengths in pictures; what is not there is nothing. */
export const cents = (amount: string | null | undefined): number => (amount ? Number(amount.replace('.', '')) : 0);
