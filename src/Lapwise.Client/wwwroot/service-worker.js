// While the page is being written it always comes from the server; the published worker keeps it for days without reception.
