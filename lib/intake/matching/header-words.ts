// What people call our columns in their own programs. Common practice of the trade, no source; the other languages hold
// the basic words only (German, French, Spanish, Italian, Dutch, Portuguese). All is written as `plainHeader` leaves it:
// lower case, no accents, short forms spelt out. A number behind a phrase is how surely it means the column, 1 where there
// is none. By column; a name with its kind in front of a colon holds for that kind alone.

export const headerWords: Readonly<Record<string, readonly string[]>> = {
  job_number: [
    "job, job id, work order, work order number, order number, service order, service order number, repair order",
    "repair order number, ticket, ticket number, ticket id, call number, service call number, case number",
    "case id, service request number, repair number, repair id, record number, record id, dispatch number",
    "reference number, reference = 0.8, id = 0.92, number = 0.8, order = 0.8, call = 0.7, auftragsnummer, auftrag",
    "auftrag number, vorgangsnummer, reparaturnummer, number intervention, numero intervention",
    "ordre de reparation, bon de travail, numero de orden, orden de trabajo, orden, numero ordine",
    "ordine di lavoro, opdrachtnummer, werkbon, bonnummer, ordem de servico, numero da ordem",
  ],
  status: [
    "job status, state, order status, ticket status, call status, work order status, repair status",
    "current status, disposition, stage = 0.8, result = 0.7, outcome = 0.7, auftragsstatus, zustand, statut, etat",
    "estado, stato, situacao",
  ],
  maker: [
    "manufacturer, brand, make, brand name, manufacturer name, product brand, appliance brand, mfr name",
    "vendor = 0.6, hersteller, marke, fabrikat, marque, fabricant, marca, fabricante, produttore, merk, fabrikant",
  ],
  model: [
    "model number, model code, product model, appliance model, unit model, model name, product code",
    "product number = 0.9, sku = 0.8, item number = 0.7, item = 0.5, modell, modellnummer, typ, type number = 0.9",
    "modele, reference modele, modelo, modello, typenummer",
  ],
  product_type: [
    "product, appliance, appliance type, product category, category, product class, equipment type, equipment",
    "unit type, machine type, product group, product line, appliance category, device type, kind of appliance",
    "type = 0.7, description of product = 0.8, item type = 0.9, gerat, gerateart, geratetyp, produktgruppe",
    "appareil, type appareil, categorie, aparato, tipo de aparato, producto, electrodomestico, apparecchio",
    "prodotto, apparaat, producttype, aparelho, produto",
  ],
  serial: [
    "serial number, sn, serial code, unit serial, unit serial number, product serial, appliance serial",
    "serial number of unit, machine serial, seriennummer, serien number, geratenummer, fabriknummer",
    "numero de serie, number serie, number de serie, numero serie, matricola, numero di serie, serienummer",
    "unit id = 0.8",
  ],
  requested_on: [
    "requested date, request date, reported date, date reported, call date, date of call, created date",
    "date created, created, open date, opened, date opened, received date, date received, intake date",
    "entered date, date entered, booked, booked date, order date, created at = 0.95, call received",
    "complaint date, meldedatum, eingangsdatum, annahmedatum, auftragsdatum, date demande, date appel",
    "date creation, fecha de solicitud, fecha de aviso, fecha creacion, data richiesta, data chiamata",
    "meldingsdatum, aanmelddatum, data de abertura, data do pedido",
  ],
  first_visit_on: [
    "first visit, first visit date, visit date, service date, appointment date, scheduled date, date scheduled",
    "arrival date, date of service, date of visit, dispatch date, visit = 0.7, termin, besuchsdatum, einsatzdatum",
    "date visite, date intervention, fecha de visita, data visita, data intervento, bezoekdatum, data da visita",
  ],
  diagnosed_on: ["diagnosis date, diagnosed date, date diagnosed, diagnose datum, date diagnostic, fecha diagnostico"],
  parts_ordered_on: [
    "parts ordered, parts order date, part order date, date parts ordered, parts ordered date, teile bestellt",
  ],
  parts_received_on: [
    "parts received, parts received date, part received date, date parts received, parts arrived, teile erhalten",
  ],
  completed_on: [
    "completed date, completion date, date completed, completed, closed date, date closed, close date, closed",
    "finish date, finished, done, done date, date done, repair date, date of repair, date repaired, repaired date, end date",
    "job completed, completed at, closed at, job date, event date = 0.85, date = 0.75, service completed = 0.95",
    "erledigt, erledigt am, abschlussdatum, fertig am, reparaturdatum, date fin, date cloture, date reparation",
    "fecha de cierre, fecha fin, fecha reparacion, data chiusura, data riparazione, afgerond, datum gereed",
    "einddatum, data de conclusao, data de fechamento, datum = 0.75, fecha = 0.75, data = 0.6",
  ],
  invoiced_on: [
    "invoice date, invoiced date, date invoiced, billing date, billed date, bill date, rechnungsdatum",
    "date facture, date de facture, fecha factura, fecha de factura, data fattura, factuurdatum, data da fatura",
  ],
  complaint: [
    "customer complaint, problem, problem description, complaint description, reported problem, issue",
    "fault description, customer states, symptom description, nature of problem, service requested",
    "reason for call, description = 0.75, fault = 0.7, notes = 0.5, beanstandung, fehlerbeschreibung",
    "problembeschreibung, kundenangabe, plainte, panne declaree, description panne, probleme, queja, averia",
    "descripcion averia, reclamo, difetto, guasto dichiarato, klacht, klachtomschrijving, reclamacao",
    "defeito reclamado",
  ],
  cause_note: [
    "cause note, cause notes, diagnosis, findings, technician findings, cause description, found",
    "technician notes, tech notes, diagnosis notes, diagnose, befund, diagnostic, constat, diagnostico, diagnosi",
    "bevinding",
  ],
  correction: [
    "work performed, service performed, work done, repair description, resolution, repair performed, action taken",
    "corrective action, solution, correction notes, work description, repair notes, repair, ausgefuhrte arbeiten",
    "arbeit, massnahme, travaux effectues, reparation effectuee, trabajo realizado, solucion, lavoro eseguito",
    "riparazione, werkzaamheden, uitgevoerd werk, servico realizado",
  ],
  symptom: [
    "symptom code, complaint code, problem code, defect, defect code, symptom key, fault code, symptome, sintoma",
    "sintomo, symptoom",
  ],
  component: [
    "failed component, component code, failed part, part failed, defective part, component name, section code",
    "assembly, causal part, bauteil, baugruppe, composant, componente, onderdeelgroep, section = 0.7",
  ],
  failure_mode: [
    "failure code, failure mode code, mode of failure, failure type, condition code, fehlerart",
    "mode de defaillance, modo de fallo",
  ],
  cause: [
    "cause code, root cause, failure cause, reason code, cause of failure, reason = 0.7, ursache, causa, oorzaak",
  ],
  visits: [
    "number of visits, visit count, trips count, trip count, number of trips, visit number, anzahl besuche",
    "nombre de visites, numero de visitas",
  ],
  technician: [
    "technician name, technician id, technician code, technician number, servicer, engineer, repairer",
    "serviced by, assigned to, employee, assigned technician, field technician, techniker, monteur, technicien",
    "tecnico, mecanico",
  ],
  payer: [
    "payer type, bill to, billed to, job type, payment type, coverage, coverage type, warranty type, warranty",
    "warranty status, service type, call type, billing type, charge to, paid by, pay type, account type",
    "order type = 0.85, kostentrager, garantie, type de prise en charge, garantia, garanzia, tipo de servicio",
  ],
  labour_minutes: [
    "labour minutes, labour hours, labour time, hours, minutes, time spent, work time, working time, hours worked",
    "repair time, duration, service time, time on job, actual hours, actual time, labour = 0.95, time = 0.7",
    "arbeitszeit, stunden, arbeitsstunden, minuten, temps, heures, duree, temps passe, horas, tiempo, ore",
    "ore lavoro, uren, arbeidstijd, tempo",
  ],
  labour: [
    "labour amount, labour charge, labour cost, labour total, labour price, labour fee, service charge",
    "labour = 0.9, lohnkosten, arbeitskosten, arbeitslohn, main d oeuvre, cout main d oeuvre, mano de obra",
    "manodopera, arbeidsloon, mao de obra",
  ],
  trip: [
    "trip charge, trip fee, travel, travel charge, travel cost, mileage charge, call out fee, service call fee",
    "trip amount, call out charge, anfahrt, fahrtkosten, anfahrtskosten, deplacement, frais deplacement",
    "desplazamiento, trasferta, diritto di chiamata, voorrijkosten, deslocamento",
  ],
  trip_miles: [
    "miles, mileage, trip mileage, miles driven, round trip miles, distance, travel distance, odometer = 0.5, meilen",
  ],
  currency: ["currency code, waehrung, wahrung, devise, moneda, valuta, moeda"],
  authorization_number: [
    "authorization, authorization code, approval number, approval code, claim authorization",
    "preauthorization number, genehmigungsnummer, freigabenummer, numero autorisation, numero de autorizacion",
    "autorizacion",
  ],
  authorized_on: [
    "authorization date, approval date, approved date, date approved, date authorized, genehmigt am",
    "date autorisation",
  ],
  callback_of: [
    "callback, callback job, original job, original job number, parent job, parent job number, previous job",
    "recall of, related job, original work order, parent work order, redo of, prior job, return of job",
    "ursprungsauftrag, vorauftrag, intervention origine, orden original",
  ],
  made: [
    "manufacture date, date of manufacture, manufactured, manufacturing date, year of manufacture",
    "manufacture year, build date, production date, production year, date code, year made, made on, baujahr",
    "herstelldatum, produktionsdatum, date fabrication, annee fabrication, fecha de fabricacion",
    "ano de fabricacion, data produzione, anno produzione, bouwjaar, productiedatum, ano de fabricacao",
  ],
  sold_on: [
    "purchase date, date of purchase, date purchased, purchased, sold date, sale date, date sold, date of sale",
    "bought, purchase, pop date, kaufdatum, verkaufsdatum, date achat, date vente, fecha de compra, fecha compra",
    "fecha de venta, data acquisto, data di acquisto, aankoopdatum, data da compra",
  ],
  "contracts:sold_on": [
    "contract sale date, contract sold, sale date, sold date, purchase date, contract purchase date, kaufdatum",
  ],
  delivered_on: [
    "delivery date, date delivered, delivered, delivered date, lieferdatum, date livraison, fecha de entrega",
    "data consegna, leverdatum",
  ],
  installed_on: [
    "install date, installation date, installed, date installed, installed date, in service date, start up date",
    "installationsdatum, einbaudatum, date installation, fecha de instalacion, data installazione",
    "installatiedatum",
  ],
  shipped_on: ["ship date, shipped date, shipment date, date shipped, shipped, versanddatum, date expedition"],
  occupied_on: ["occupancy date, closing date, move in date, date of occupancy, einzugsdatum"],
  registered_on: ["registration date, date registered, registered, product registration date, registrierungsdatum"],
  retired_on: [
    "retired date, retirement date, removed date, scrapped, disposal date, out of service date, replaced date",
    "ausser betrieb",
  ],
  recorded_from: ["recorded from, records since, history from"],
  use: ["usage, usage type, use type, residential commercial, nutzung, usage prevu, uso"],
  territory: ["state, country, region, state code, country code, location state, land, pays, pais, paese"],
  owner_number: ["owner, number of owners, owner sequence"],
  line: ["line number, line item, item line, position, sequence, line id = 0.9, pos, zeile, ligne, linea, regel"],
  part_number: [
    "part, part code, part id, parts, spare part, spare part number, parts number, material number, material",
    "part number used, part used, article number, item number = 0.9, item code = 0.85, item = 0.7, sku = 0.85",
    "teilenummer, ersatzteilnummer, ersatzteil, artikelnummer, teil, numero de piece, reference piece, piece",
    "numero de pieza, repuesto, pieza, ricambio, codice ricambio, onderdeelnummer, onderdeel, peca",
    "codigo da peca",
  ],
  description: [
    "part description, part name, item description, parts description, material description, line description",
    "description = 0.95, bezeichnung, teilebezeichnung, artikelbezeichnung, designation, libelle, descripcion",
    "descripcion pieza, descrizione, omschrijving, descricao",
  ],
  role: ["line type, part type, charge type, line role, item type, zeilenart, type ligne"],
  quantity: [
    "part quantity, quantity used, parts quantity, units, count, pieces = 0.85, menge, anzahl, stuck, quantite",
    "cantidad, quantita, aantal, quantidade",
  ],
  unit_cost: [
    "part cost, cost, unit price, cost each, price each, part price, parts cost, dealer cost, net price, each",
    "price = 0.9, amount = 0.6, einzelpreis, stuckpreis, preis, ek preis, prix unitaire, cout unitaire, prix",
    "precio unitario, costo unitario, precio, prezzo unitario, prezzo, stuksprijs, prijs, preco unitario, preco",
  ],
  list_price: [
    "list, retail price, msrp, suggested price, sell price, selling price, price = 0.9, listenpreis, vk preis",
    "prix public, precio de lista, prezzo di listino, adviesprijs",
  ],
  cost: [
    "dealer cost, net cost, net price, purchase price, unit cost, cost price, wholesale price, ek preis",
    "einkaufspreis, prix achat, costo, prezzo netto, inkoopprijs",
  ],
  distributor: [
    "parts distributor, supplier, parts supplier, vendor = 0.9, lieferant, fournisseur, proveedor, fornitore",
    "leverancier, fornecedor",
  ],
  invoice_number: [
    "invoice, part invoice, distributor invoice, supplier invoice, parts invoice number, bill number",
    "rechnungsnummer, numero facture, numero de factura, numero fattura, factuurnummer",
  ],
  invoice_line: ["invoice line number, invoice position, rechnungsposition"],
  replaces: [
    "replaces part, supersedes, old part number, replaced part, former part number, previous part number, ersetzt",
    "remplace, reemplaza, sostituisce, vervangt",
  ],
  superseded_by: [
    "superseded, replaced by, new part number, substitute, successor, replacement part number",
    "current part number, superseding part number, ersetzt durch, nachfolger, remplace par, reemplazado por",
    "sostituito da, vervangen door",
  ],
  effective_on: ["effective date, valid from, price date, date effective, gultig ab, date effet, vigente desde"],
  contract_number: [
    "contract, contract id, agreement number, agreement, service contract number, plan number, certificate number",
    "vertragsnummer, numero contrat, numero de contrato, numero contratto, contractnummer",
  ],
  plan: [
    "plan name, plan code, plan type, coverage plan, contract type, coverage type, program, tarif, formule",
    "tipo de contrato",
  ],
  starts_on: [
    "start date, effective date, coverage start, contract start, start, begin date, valid from",
    "coverage begin date, vertragsbeginn, beginn, date debut, fecha inicio, data inizio, ingangsdatum",
  ],
  ends_on: [
    "end date, expiration date, expiry date, expires, coverage end, contract end, valid until, expires on",
    "vertragsende, ende, date fin, fecha fin, fecha vencimiento, data fine, einddatum",
  ],
  cancelled_on: [
    "cancellation date, cancel date, cancelled date, canceled, date cancelled, gekundigt am, date resiliation",
  ],
  wait_days: ["waiting period, waiting days, wait period, wartezeit, delai de carence, periodo de espera"],
  deductible: ["service fee, deductible amount, excess, copay, selbstbeteiligung, franchise, franquicia, eigen risico"],
  limit: ["coverage limit, limit of liability, maximum, liability limit, claim limit, hochstbetrag, plafond, limite"],
  holder: [
    "contract holder, holder number, customer number, customer id, account number, customer, kundennummer",
    "numero client, numero de cliente, klantnummer",
  ],
  first_used_on: ["first use date, date of first use, first used, put into use, inbetriebnahme, mise en service"],
  acquired_on: [
    "acquired date, date acquired, transfer date, date of transfer, owner since, ownership date, change of owner",
    "ubernommen am, eigentumer seit",
  ],
  transfer_registered_on: ["transfer registered, transfer registration date, registration of transfer"],
  exchanged_on: [
    "exchange date, exchanged, exchanged date, date exchanged, replacement date, swap date, austauschdatum",
  ],
  exchanged_serial: [
    "exchanged for serial, original serial, old serial, previous serial, returned serial, replaced serial",
    "alte seriennummer",
  ],
  serial_removed: ["serial plate removed, plate removed, serial altered, no serial plate"],
  check: ["test, check name, measurement, reading name"],
  "readings:number": ["reading number, sequence, line"],
  value: ["reading, measured, measured value, result value, messwert"],
  point_a: ["test point a, from point, point 1"],
  point_b: ["test point b, to point, point 2"],
  mode: ["meter mode, meter setting, function"],
  low: ["minimum, min, lower limit"],
  high: ["maximum, max, upper limit"],
  taken_at: ["time taken, timestamp, measured at, date taken"],
  file: ["file name, photo, picture, image, path"],
  caption: ["title, photo description, comment"],
};
