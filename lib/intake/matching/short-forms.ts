/** Short forms and how they are spelt out. Common practice, no source. */
export const shortForms: ReadonlyMap<string, string> = new Map(
  [
    "no: number, nr: number, num: number, nbr: number, nmbr: number, numb: number, dt: date, dte: date",
    "desc: description, descr: description, qty: quantity, qnty: quantity, qnt: quantity, mfr: manufacturer",
    "mfg: manufacturer, manuf: manufacturer, manufact: manufacturer, mnf: manufacturer, ser: serial, srl: serial",
    "mdl: model, mod: model, tech: technician, inv: invoice, auth: authorization, authorisation: authorization",
    "authorised: authorized, hrs: hours, hr: hours, mins: minutes, min: minutes, amt: amount, wo: work order",
    "ro: repair order, so: service order, labor: labour, lab: labour, compl: completed, comp: completed",
    "prod: product, cat: category, curr: currency, pn: part number, pt: part, prt: part, svc: service",
    "srv: service, req: requested, rcvd: received, recd: received, ord: order, purch: purchase, del: delivery",
    "inst: install, chg: charge, cust: customer, appl: appliance, equip: equipment, mfd: manufactured",
    "canceled: cancelled, dop: date of purchase, callbk: callback, uom: unit, sympt: symptom, dist: distributor",
    "supp: supplier, loc: location",
  ]
    .flatMap((line) => line.split(", "))
    .map((pair): [string, string] => {
      const [short = "", long = ""] = pair.split(": ");
      return [short, long];
    }),
);
