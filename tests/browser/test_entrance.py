"""House on the laptop's own screen: a code for one device, the list of those let in, and striking one off."""


def test_the_laptop_shows_a_code_lists_the_device_it_let_in_and_strikes_it_off(laptop, desktop):
    page = desktop.new_page()
    page.goto(f"{laptop.url}#/house")
    page.get_by_role("button", name="Pair a device").click()
    code = page.locator("#entrance ~ p strong").text_content()
    request = desktop.request
    paired = request.post(f"{laptop.url}api/devices", data={"code": code, "name": "the phone"})
    assert paired.status == 201
    page.reload()
    page.get_by_role("button", name="Strike the phone off").click()
    page.get_by_text("struck off").wait_for()
    with laptop.app.extensions["scantling"].store.register() as register:
        (device,) = register.devices()
    assert device.struck_ms is not None
