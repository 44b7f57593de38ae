// What companies write for the words of ours, by column. Common practice of the trade, no source. Lower case, letters and
// digits only, as `plainWord` leaves them.

export const tradeWords: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  status: {
    closed:
      "closed, complete, completed, done, finished, fixed, repaired, resolved, paid, invoiced, billed, closed paid, closed complete, ok, c, cl, comp, abgeschlossen, erledigt, fertig, repariert, termine, clos, cloture, repare, cerrado, terminado, completado, reparado, chiuso, completato, riparato, gesloten, afgerond, gereed, gerepareerd, fechado, concluido",
    void: "void, voided, deleted, invalid, v, reversed, written off, storniert, annule, anulado, annullato, vervallen",
    cancelled:
      "cancelled, canceled, cancel, cxl, cx, cncl, customer cancelled, customer cancelled, declined, refused, no show, abgesagt, cancelado, afgezegd",
    estimate:
      "estimate, quote, quoted, quotation, est, estimate only, estimate declined, pending estimate, kostenvoranschlag, angebot, devis, presupuesto, preventivo, offerte, orcamento",
    duplicate: "duplicate, dup, dupe, duplicate entry, double entry, doppelt, doublon, duplicado, duplicato, dubbel",
    not_closed:
      "open, opened, new, scheduled, booked, assigned, dispatched, in progress, started, active, on hold, hold, pending, waiting, waiting for parts, awaiting parts, parts on order, part on order, parts ordered, backordered, on order, needs parts, return trip, incomplete, not complete, offen, in arbeit, geplant, wartet auf teile, teile bestellt, ouvert, en cours, en attente, pieces commandees, abierto, en curso, pendiente, en espera, aperto, in corso, in attesa, bezig, in behandeling, gepland, wacht op onderdelen, aberto, em andamento",
  },
  payer: {
    customer:
      "customer, cod, c o d, cash, retail, out of warranty, oow, customer pay, customer paid, chargeable, private, consumer, non warranty, no warranty, coD, kunde, selbstzahler, client, hors garantie, cliente, fuera de garantia, fuori garanzia, klant, buiten garantie",
    maker:
      "maker, manufacturer, warranty, warr, wty, in warranty, iw, factory, factory warranty, oem, mfr, mfg, manufacturer warranty, w, garantie, herstellergarantie, constructeur, sous garantie, fabricante, garantia, en garantia, garanzia, in garanzia, fabrieksgarantie, in garantie",
    contract:
      "contract, service contract, sc, extended, extended warranty, ext warranty, ext, ew, esp, service plan, home warranty, hw, plan, third party, tpa, vertrag, anschlussgarantie, contrat, extension de garantie, contrato, extension de garantia, contratto, contractueel, verlengde garantie",
    campaign:
      "campaign, recall, rework campaign, product recall, field action, service bulletin, ruckruf, rappel, campana, richiamo, terugroepactie",
    dealer:
      "dealer, stock, store stock, floor model, pre sale, presale, pdi, retailer, builder, handler, lager, revendeur, distribuidor, rivenditore",
    own_guarantee:
      "own guarantee, redo, callback, call back, comeback, recall job, internal, labour warranty, labor warranty, our warranty, shop warranty, no charge, nc, nacharbeit, retour atelier",
    goodwill:
      "goodwill, concession, policy adjustment, courtesy, free of charge, foc, kulanz, geste commercial, cortesia",
  },
  product_type: {
    front_load_washer:
      "front load washer, front loader, front loading washer, fl washer, flw, fl, hew, frontlader, lave linge frontal, lavadora carga frontal, voorlader, washing machine front load",
    top_load_washer:
      "top load washer, top loader, top loading washer, tl washer, tlw, tl, toplader, lave linge top, lavadora carga superior, bovenlader",
    electric_dryer:
      "electric dryer, elec dryer, e dryer, ed, dryer electric, dryer e, wascheTrockner, trockner, waschetrockner, seche linge, secadora electrica, asciugatrice, droger, wasdroger",
    gas_dryer: "gas dryer, g dryer, gd, dryer gas, dryer g, secadora de gas, gastrockner",
    dishwasher:
      "dishwasher, dish washer, dish w, d w, dw, dishw, geschirrspuler, spulmaschine, lave vaisselle, lavavajillas, lavaplatos, lavastoviglie, vaatwasser, afwasmachine, lava loucas",
    refrigerator:
      "refrigerator, fridge, frig, refrig, ref, rf, reefer, refer, freezer, fridge freezer, side by side, sxs, french door, fdr, bottom mount, top mount, kuhlschrank, kuhlgerat, gefrierschrank, refrigerateur, frigo, congelateur, refrigerador, nevera, frigorifico, congelador, frigorifero, koelkast, vriezer, geladeira",
    range_oven:
      "range, oven, stove, range oven, cooker, cooktop, hob, wall oven, rng, gas range, electric range, slide in range, herd, backofen, kochfeld, cuisiniere, four, plaque, estufa, horno, cocina, forno, piano cottura, fornuis, kookplaat, fogao",
    other_equipment:
      "other, other equipment, misc, miscellaneous, microwave, mw, mwo, disposer, disposal, ac, air conditioner, dehumidifier, ice maker, hood, vent hood, compactor, vacuum, small appliance, sonstiges, autre, divers, otro, otros, altro, overig, outro",
  },
  cause: {
    component:
      "component, defect, defective, part failure, failed part, failed, mechanical, electrical, defective part, material defect, manufacturing defect, workmanship, material, teiledefekt, materialfehler, defaut, pieza defectuosa, difetto, defect onderdeel",
    foreign_object:
      "foreign object, fo, foreign, object, coin, fremdkorper, corps etranger, objeto extrano, corpo estraneo, vreemd voorwerp",
    suds_detergent: "suds, detergent, oversuds, over sudsing, wrong detergent",
    installation:
      "installation, install, install error, improper installation, bad install, instal, einbaufehler, mauvaise installation, instalacion, installazione, installatie",
    supply:
      "supply, power supply, water supply, house wiring, low voltage, no water, utility, stromversorgung, alimentation, suministro",
    surge_lightning: "surge, lightning, power surge, uberspannung, blitz, surtension, sobretension",
    freeze: "freeze, frozen, frost, frost damage, gel, helada",
    liquid_pest: "liquid, pest, pests, rodent, rodents, mice, insects, liquid damage, water damage, spill",
    commercial_use: "commercial use, commercial, business use",
    cosmetic: "cosmetic, scratch, dent, cosmetic damage",
    consumable: "consumable, filter, light bulb, bulb, verbrauchsmaterial, consommable, consumible",
    maintenance:
      "maintenance, lack of maintenance, cleaning, dirty, needs cleaning, wartung, entretien, mantenimiento, manutenzione, onderhoud",
    misuse_accident:
      "misuse, abuse, accident, customer abuse, user error, damage by user, bedienfehler, mauvaise utilisation, mal uso, uso errato, gebruikersfout",
    modified_other_repair: "modified, other repair, tampered, previous repair, unauthorized repair",
    blockage_downstream: "blockage, clogged drain, house drain, plugged drain, standpipe",
    education:
      "education, customer education, ce, cust ed, customer instruct, instruct, explained, normal operation, operating normally, einweisung, explication",
    act_of_god: "act of god, flood, fire, storm",
    transit:
      "transit, freight damage, shipping damage, concealed damage, transportschaden, transport, dommage transport, transporte",
    no_fault_found:
      "no fault found, nff, no problem found, npf, ntf, no trouble found, could not reproduce, could not duplicate, cnd, cnr, unable to duplicate, utd, ok on arrival, kein fehler, aucun defaut, sin fallo, nessun difetto, geen fout",
    not_determined:
      "not determined, undetermined, unknown, not known, unk, other, unbekannt, inconnu, desconocido, sconosciuto, onbekend",
  },
  role: {
    fitted:
      "fitted, part, parts, used, installed, p, material, replaced, repair part, teil, piece, pieza, ricambio, onderdeel",
    core_charge: "core, core charge, core deposit, core exchange, exchange, altteil, consigne",
    freight:
      "freight, shipping, s h, shipping and handling, handling, delivery, postage, fuel surcharge, versand, fracht, porto, transport, port, frais de port, flete, envio, spedizione, verzendkosten, frete",
  },
  use: {
    household:
      "household, residential, res, home, domestic, consumer, private, haushalt, privat, domestique, domestico, huishoudelijk",
    commercial:
      "commercial, com, comm, business, laundromat, rental, gewerblich, gewerbe, professionnel, comercial, commerciale, zakelijk",
  },
  currency: {
    USD: "usd, us dollar, us dollars, dollars us, us",
    CAD: "cad, canadian dollar, ca",
    EUR: "eur, euro, euros, €",
    GBP: "gbp, pound, pounds, sterling, £",
    AUD: "aud, australian dollar, au",
  },
  power: {
    off: "off, unplugged, no power, disconnected, power off",
    powered_panels_closed: "on, powered, running, power on, panels closed",
    live: "live, energized, energised",
  },
  mode: {
    ohm: "ohms, resistance, Ω",
    continuity: "cont",
    volt_ac: "vac, ac volts, volts ac, v ac",
    volt_dc: "vdc, dc volts, volts dc, v dc",
    ampere: "amps, amp, a, current",
    microfarad: "uf, µf, mfd, capacitance",
    inch: "in, inches",
    inch_water: "wc, in wc, inwc, inches of water",
    psi: "pressure",
    degree_f: "f, deg f, °f, fahrenheit",
    degree_c: "c, deg c, °c, celsius",
    observation: "visual, look, inspection, observed",
    fault_code: "code, error code, fault",
  },
  outcome: {
    number: "value, measured, reading",
    open: "ol, o l, open circuit, infinite",
    short: "shorted, short circuit, 0l",
    no_reading: "none, nothing, no value",
    finding: "observation, found",
    code: "fault code, error code",
  },
  "yes or no": {
    yes: "yes, y, true, t, 1, x, on, ja, j, oui, o, si, s, sim",
    no: "no, n, false, f, 0, off, nein, non, nee, nao",
  },
  symptom: {
    will_not_drain:
      "no drain, not draining, wont drain, does not drain, n d, pumpt nicht ab, ne vidange pas, no desagua, non scarica, pompt niet af",
    will_not_spin: "no spin, not spinning, wont spin, does not spin",
    will_not_fill: "no fill, wont fill, not filling, no water fill",
    will_not_start: "no start, wont start, does not start, inop, inoperative, not working",
    no_power: "no power, dead, no lights",
    leaks: "leak, leaking, leaks water, water leak, leaks, undicht, fuite, fuga, perdita, lekt",
    noisy: "noise, noisy, loud, making noise, laut, bruit, ruido, rumore, lawaai",
    will_not_heat: "no heat, not heating, wont heat, no hot, heizt nicht, ne chauffe pas, no calienta, non scalda",
    not_cold: "not cooling, warm, no cool, not cold, not cooling properly, kuhlt nicht, no enfria, koelt niet",
    shakes: "vibration, vibrating, shaking, walking, out of balance",
    fault_code: "error code, error, code, fault code, f code",
    no_ice: "no ice, not making ice",
    frost_build_up: "frost, ice build up, frosting",
    dries_badly: "not drying, clothes damp, long dry time",
    door_stays_locked: "door locked, door wont open, locked",
    smells: "smell, odor, odour, mold, mould",
    smells_of_gas: "gas smell, smell gas, gas odor",
  },
};

/** Letters and digits alone, parted by single blanks, lower case, without accents. */
export function plainWord(word: string): string {
  return word
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/ß/g, "ss")
    .replace(/[^\p{L}\p{N}€£Ω°µ]+/gu, " ")
    .trim();
}
