## House
