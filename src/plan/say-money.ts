/** An amount as shops write it: a sign such as $ stands before it, a code such as EUR behind it. */
export function sayMoney(amount: number, currency: string | null): string {
  const number = amount.toFixed(2);
  if (currency === null) {
    return number;
  }
  return /^\p{L}{2,}$/u.test(currency) ? `${number} ${currency}` : `${currency}${number}`;
}
