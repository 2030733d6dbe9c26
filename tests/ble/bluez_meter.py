"""A pin meter on a BlueZ that is not ours: what python3-dbusmock's template `bluez5` has no part of.

The template has the adapters and the devices. This adds the GATT objects of a device and what their methods do, as
BlueZ's own documents say (doc/org.bluez.GattCharacteristic.rst, GattDescriptor.rst, Device.rst, Adapter.rst and
Battery.rst of its repository) and its src/gatt-client.c does: one signal for each notification, one more for each read,
a session that outlasts a dropped connection, "Not paired" where a meter asks for pairing.

`bluez-world.ts` calls the methods of org.bluez.Mock that are made here.
"""

import json

import dbus
from dbusmock import OBJECT_MANAGER_IFACE, mockobject
from dbusmock.templates import bluez5
from dbusmock.templates.bluez5 import *  # The mock looks for the template's methods in this file.
from gi.repository import GLib

SERVICE_IFACE = 'org.bluez.GattService1'
CHARACTERISTIC_IFACE = 'org.bluez.GattCharacteristic1'
DESCRIPTOR_IFACE = 'org.bluez.GattDescriptor1'
BATTERY_IFACE = 'org.bluez.Battery1'

HEARD_EVERY_MS = 100
STREAM_EVERY_MS = 10


def byte_array(data):
    return dbus.Array([dbus.Byte(b) for b in data], signature='y', variant_level=1)


def text_array(texts):
    return dbus.Array(texts, signature='s', variant_level=1)


def failed(name, text):
    return dbus.exceptions.DBusException(text, name='org.bluez.Error.' + name)


def change(obj, interface, changed, invalidated=()):
    """Sets properties and tells of them, as BlueZ does: also where the value is the same again."""
    obj.props.setdefault(interface, {}).update(changed)
    obj.EmitSignal(dbus.PROPERTIES_IFACE, 'PropertiesChanged', 'sa{sv}as', [
        interface, dbus.Dictionary(changed, signature='sv'), dbus.Array(list(invalidated), signature='s')])


def tell_added(path, interfaces):
    mockobject.objects['/'].EmitSignal(OBJECT_MANAGER_IFACE, 'InterfacesAdded', 'oa{sa{sv}}', [
        dbus.ObjectPath(path), interfaces])


def add(path, interface, properties, methods):
    mockobject.objects['/'].AddObject(path, interface, properties, methods)
    tell_added(path, {interface: properties})
    return mockobject.objects[path]


def remove(path):
    obj = mockobject.objects[path]
    obj.RemoveObject(path)
    mockobject.objects['/'].EmitSignal(OBJECT_MANAGER_IFACE, 'InterfacesRemoved', 'oas', [
        dbus.ObjectPath(path), list(obj.props)])


# What the meter lets a person do.

def connect(device):
    meter = device.meter
    if device.connected:
        raise failed('AlreadyConnected', 'Already Connected')
    if meter['refusals'] > 0:
        meter['refusals'] -= 1
        raise failed('Failed', 'le-connection-abort-by-local')
    device.connected = True
    meter['links'] += 1
    change(device, DEVICE_IFACE, {'Connected': dbus.Boolean(True, variant_level=1)})
    if meter['resolves']:
        GLib.timeout_add(20, resolve, device)


def resolve(device):
    if not device.connected or device.path not in mockobject.objects:
        return False
    export_services(device)
    if device.meter['batteryPct'] is not None:
        battery = {'Percentage': dbus.Byte(device.meter['batteryPct'], variant_level=1)}
        device.props[BATTERY_IFACE] = battery
        tell_added(device.path, {BATTERY_IFACE: battery})
    change(device, DEVICE_IFACE, {'ServicesResolved': dbus.Boolean(True, variant_level=1)})
    return False


def disconnect(device):
    if not device.connected:
        raise failed('NotConnected', 'Not Connected')
    device.connected = False
    change(device, DEVICE_IFACE, {
        'Connected': dbus.Boolean(False, variant_level=1),
        'ServicesResolved': dbus.Boolean(False, variant_level=1),
    })


def pair(device):
    if device.props[DEVICE_IFACE]['Paired']:
        raise failed('AlreadyExists', 'Already Exists')
    if device.meter['pairing'] == 'code':
        raise failed('AuthenticationRejected', 'Authentication Rejected')
    change(device, DEVICE_IFACE, {'Paired': dbus.Boolean(True, variant_level=1)})


def device_of(characteristic):
    return mockobject.objects['/'.join(characteristic.path.split('/')[:5])]


def ask(characteristic):
    device = device_of(characteristic)
    if not device.connected:
        raise failed('Failed', 'Not connected')
    if device.meter['pairing'] != 'none' and not device.props[DEVICE_IFACE]['Paired']:
        raise failed('NotPermitted', 'Not paired')
    return device


def read_value(characteristic, _options):
    ask(characteristic)
    value = characteristic.props[CHARACTERISTIC_IFACE]['Value']
    change(characteristic, CHARACTERISTIC_IFACE, {'Value': value})
    return value


def read_descriptor(descriptor, _options):
    return descriptor.props[DESCRIPTOR_IFACE]['Value']


def write_value(characteristic, value, _options):
    ask(characteristic).meter['written'].append(bytes(value).hex())


def start_notify(characteristic):
    ask(characteristic)
    if characteristic.notifying:
        raise failed('Failed', 'Already notifying')
    characteristic.notifying = True


def stop_notify(characteristic):
    if not characteristic.notifying:
        raise failed('Failed', 'No notify session started')
    characteristic.notifying = False


def export_services(device):
    for s, service in enumerate(device.meter['services']):
        service_path = f'{device.path}/service{s:04x}'
        if service_path in mockobject.objects:
            continue
        add(service_path, SERVICE_IFACE, {
            'UUID': dbus.String(service['uuid'], variant_level=1),
            'Device': dbus.ObjectPath(device.path, variant_level=1),
            'Primary': dbus.Boolean(True, variant_level=1),
        }, [])
        for c, characteristic in enumerate(service['characteristics']):
            path = f'{service_path}/char{c:04x}'
            obj = add(path, CHARACTERISTIC_IFACE, {
                'UUID': dbus.String(characteristic['uuid'], variant_level=1),
                'Service': dbus.ObjectPath(service_path, variant_level=1),
                'Value': byte_array(bytes.fromhex(characteristic.get('value', ''))),
                'Flags': text_array(characteristic['flags']),
            }, [
                ('ReadValue', 'a{sv}', 'ay', read_value),
                ('WriteValue', 'aya{sv}', '', write_value),
                ('StartNotify', '', '', start_notify),
                ('StopNotify', '', '', stop_notify),
            ])
            obj.notifying = False
            for d, (uuid, value) in enumerate(characteristic.get('descriptors', {}).items()):
                add(f'{path}/desc{d:04x}', DESCRIPTOR_IFACE, {
                    'UUID': dbus.String(uuid, variant_level=1),
                    'Characteristic': dbus.ObjectPath(path, variant_level=1),
                    'Value': byte_array(bytes.fromhex(value)),
                }, [('ReadValue', 'a{sv}', 'ay', read_descriptor)])


# What the tests do to the meter.

@dbus.service.method(BLUEZ_MOCK_IFACE, in_signature='ssss', out_signature='s')
def AddMeter(self, adapter, address, name, meter):
    """A device as of an earlier time: it is heard only once somebody listens and it advertises."""
    path = self.AddDevice(adapter, address, name)
    device = mockobject.objects[path]
    for absent in ('RSSI', 'ManufacturerData', 'ServiceData', 'AdvertisingData'):
        del device.props[DEVICE_IFACE][absent]
    device.meter = {
        'advertises': True, 'refusals': 0, 'resolves': True, 'pairing': 'none', 'batteryPct': 76, 'services': [],
        'manufacturerData': {}, 'serviceData': {}, 'links': 0, 'written': [], **json.loads(meter),
    }
    device.AddMethods(DEVICE_IFACE, [
        ('Connect', '', '', connect), ('Disconnect', '', '', disconnect), ('Pair', '', '', pair)])
    uuids = [service['uuid'] for service in device.meter['services']]
    device.props[DEVICE_IFACE]['UUIDs'] = text_array(uuids) if uuids else dbus.Array([], signature='s', variant_level=1)
    return path


@dbus.service.method(BLUEZ_MOCK_IFACE, in_signature='ss', out_signature='')
def SetMeter(self, path, meter):
    mockobject.objects[path].meter.update(json.loads(meter))


@dbus.service.method(BLUEZ_MOCK_IFACE, in_signature='s', out_signature='s')
def GetMeter(self, path):
    device = mockobject.objects[path]
    notifying = [p for p, o in mockobject.objects.items() if p.startswith(path + '/') and getattr(o, 'notifying', False)]
    return json.dumps({**device.meter, 'connected': device.connected, 'notifying': notifying})


@dbus.service.method(BLUEZ_MOCK_IFACE, in_signature='say', out_signature='')
def Notify(self, path, value):
    notify(mockobject.objects[path], bytes(value))


def notify(characteristic, data):
    if characteristic.notifying and device_of(characteristic).connected:
        change(characteristic, CHARACTERISTIC_IFACE, {'Value': byte_array(data)})


@dbus.service.method(BLUEZ_MOCK_IFACE, in_signature='sii', out_signature='')
def Stream(self, path, count, hz):
    """`count` values, each the number of its place in hundredths from 0, as two bytes, low first."""
    characteristic = mockobject.objects[path]
    state = {'sent': 0, 'due': 0.0}

    def tick():
        state['due'] += hz * STREAM_EVERY_MS / 1000
        while state['sent'] < min(count, state['due']):
            notify(characteristic, (state['sent'] & 0xffff).to_bytes(2, 'little'))
            state['sent'] += 1
        return state['sent'] < count
    GLib.timeout_add(STREAM_EVERY_MS, tick)


@dbus.service.method(BLUEZ_MOCK_IFACE, in_signature='s', out_signature='')
def DropLink(self, path):
    disconnect(mockobject.objects[path])


@dbus.service.method(BLUEZ_MOCK_IFACE, in_signature='s', out_signature='')
def RemoveObjectsUnder(self, path):
    """The deepest first, and at last the object itself."""
    for each in sorted((p for p in mockobject.objects if p == path or p.startswith(path + '/')), reverse=True):
        remove(each)


@dbus.service.method(BLUEZ_MOCK_IFACE, in_signature='ssss', out_signature='')
def Distort(self, path, interface, name, kind):
    """A property of another type than the documents say."""
    value = {'number': dbus.Int32(7, variant_level=1), 'text': dbus.String('seven', variant_level=1),
             'texts': text_array(['seven'])}[kind]
    change(mockobject.objects[path], interface, {name: value})


def tick():
    """Whoever advertises is heard while somebody listens, and by nobody else."""
    for path, device in list(mockobject.objects.items()):
        meter = getattr(device, 'meter', None)
        if meter is None:
            continue
        adapter = mockobject.objects.get(str(device.props[DEVICE_IFACE]['Adapter']))
        listens = adapter is not None and adapter.props[ADAPTER_IFACE].get('Discovering', False)
        if listens and meter['advertises'] and not device.connected:
            change(device, DEVICE_IFACE, heard(meter))
        elif not listens and 'RSSI' in device.props[DEVICE_IFACE]:
            del device.props[DEVICE_IFACE]['RSSI']
            change(device, DEVICE_IFACE, {}, ['RSSI'])
    return True


def heard(meter):
    changed = {'RSSI': dbus.Int16(-58, variant_level=1)}
    if meter['manufacturerData']:
        changed['ManufacturerData'] = dbus.Dictionary(
            {dbus.UInt16(int(k)): byte_array(bytes.fromhex(v)) for k, v in meter['manufacturerData'].items()},
            signature='qv', variant_level=1)
    if meter['serviceData']:
        changed['ServiceData'] = dbus.Dictionary(
            {k: byte_array(bytes.fromhex(v)) for k, v in meter['serviceData'].items()},
            signature='sv', variant_level=1)
    return changed


def load(mock, parameters):
    bluez5.load(mock, parameters)
    GLib.timeout_add(HEARD_EVERY_MS, tick)
