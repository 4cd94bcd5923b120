## Where a reading is entered.
